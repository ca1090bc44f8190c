import { type Likeness, likeness } from "./likeness.ts";
import type { Tag } from "./tagKey.ts";

/** Something that is known of an animal. */
interface OfAnimal {
  readonly tag: Tag;
}

/** Animals among which others that may be the same after a slip can be found: see {@link likeness}. */
export interface AlikeIndex<A extends OfAnimal> {
  /** @param animal - one that was not added before */
  readonly add: (animal: A) => void;
  /** The animals that are alike and have another key, in no order. */
  readonly alike: (tag: Tag) => readonly A[];
  /** Both: those that are alike among the animals added before, and the animal itself is added. */
  readonly meet: (animal: A) => readonly A[];
}

/**
 * An index of animals by what their tags may have been before a slip, and what a slip may have made of them.
 *
 * @example
 * alikeIndex().alike({ key: "O42", shown: "O42" }) // → []
 */
export function alikeIndex<A extends OfAnimal>(): AlikeIndex<A> {
  const byForm = new Map<string, A[]>();
  const byLess = new Map<string, A[]>();
  const ends = new Set<number>();
  const addAs = (animal: A, { form, less }: Likeness): void => {
    addTo(byForm, form, animal);
    ends.add(endOf(form));
    for (const lesser of less) {
      addTo(byLess, lesser, animal);
      ends.add(endOf(lesser));
    }
  };
  const alikeTo = ({ key }: Tag, { form, less }: Likeness): readonly A[] => {
    let found: A[] | undefined;
    const take = (animals: readonly A[] | undefined): void => {
      if (animals === undefined) return;
      for (const animal of animals)
        if (animal.tag.key !== key && !found?.includes(animal)) {
          found ??= [];
          found.push(animal);
        }
    };
    take(byForm.get(form));
    take(byLess.get(form));
    for (const lesser of less) take(byForm.get(lesser));
    return found ?? none;
  };
  // Most tags end in digits that no animal of the index ends in, and then nothing more need be known of them.
  const mayBeHere = ({ key, shown }: Tag): boolean => !endsInNumber(key, shown) || ends.has(endOf(key));
  return {
    add: (animal) => addAs(animal, likeness(animal.tag)),
    alike: (tag) => (byForm.size > 0 && mayBeHere(tag) ? alikeTo(tag, likeness(tag)) : none),
    meet(animal) {
      const like = likeness(animal.tag);
      const found = mayBeHere(animal.tag) ? alikeTo(animal.tag, like) : none;
      addAs(animal, like);
      return found;
    },
  };
}

const none: readonly never[] = [];

/** Whether a tag reads as digits, the last four of which every slip leaves as they are. */
const endsInNumber = (key: string, shown: string): boolean =>
  digitsOnly.test(key) && (key.length < 8 || fourDigits.test(shown));

const digitsOnly = /^\d+$/;
const fourDigits = /\d{4}$/;

/** The last four digits as a number, so that zeros in front of them make no difference. */
const endOf = (form: string): number => Number(form.slice(-4));

function addTo<A>(index: Map<string, A[]>, form: string, animal: A): void {
  const there = index.get(form);
  if (there === undefined) index.set(form, [animal]);
  else there.push(animal);
}

/**
 * Finds, among some animals, those that another tag may mean after a slip.
 *
 * @param animals - each animal once
 * @returns asked with a tag: the animals that are alike and have another key, in no order
 * @example
 * alikeAmong([{ tag: { key: "042", shown: "042" } }])({ key: "O42", shown: "O42" })
 * // → [{ tag: { key: "042", shown: "042" } }]
 */
export function alikeAmong<A extends OfAnimal>(animals: Iterable<A>): (tag: Tag) => readonly A[] {
  const index = alikeIndex<A>();
  for (const animal of animals) index.add(animal);
  return index.alike;
}
