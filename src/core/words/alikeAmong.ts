import { type Likeness, likeness } from "./likeness.ts";
import { PrintedTag } from "./printedTag.ts";
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
 * Two full tags are never alike, and in most flocks all tags are full: so these are looked up only once a tag that is not
 * full is met.
 *
 * @example
 * alikeIndex().alike({ key: "O42", shown: "O42" }) // → []
 */
export function alikeIndex<A extends OfAnimal>(): AlikeIndex<A> {
  const others = formIndex<A>();
  const full = formIndex<A>();
  const notYetIndexed: A[] = [];
  const find = (tag: Tag, like: Likeness): readonly A[] => {
    const found: A[] = [];
    others.find(tag, like, found);
    if (!isFull(tag)) {
      for (const animal of notYetIndexed) full.add(animal, likeness(animal.tag));
      notYetIndexed.length = 0;
      full.find(tag, like, found);
    }
    return found;
  };
  const add = (animal: A, like?: Likeness): void => {
    if (isFull(animal.tag)) notYetIndexed.push(animal);
    else others.add(animal, like ?? likeness(animal.tag));
  };
  const mayBeHere = (tag: Tag): boolean => others.size() > 0 || !isFull(tag);
  return {
    add,
    alike: (tag) => (mayBeHere(tag) ? find(tag, likeness(tag)) : none),
    meet(animal) {
      if (!mayBeHere(animal.tag)) {
        add(animal);
        return none;
      }
      const like = likeness(animal.tag);
      const found = find(animal.tag, like);
      add(animal, like);
      return found;
    },
  };
}

const none: readonly never[] = [];

/** A whole number as it is on an electronic tag: two of these are never alike. */
export function isFull(tag: Tag): boolean {
  if (tag instanceof PrintedTag) return true;
  const { key } = tag;
  if (key.length !== 15) return false;
  // Letter by letter, since every animal of a flock is asked for it and a search costs more.
  for (let at = 0; at < key.length; at++) {
    const code = key.charCodeAt(at);
    if (code < zero || code > nine) return false;
  }
  return true;
}

const zero = 0x30;
const nine = 0x39;

function formIndex<A extends OfAnimal>() {
  const byForm = new Map<string, A[]>();
  const byLess = new Map<string, A[]>();
  const take = ({ key }: Tag, animals: readonly A[] | undefined, found: A[]): void => {
    if (animals === undefined) return;
    for (const animal of animals) if (animal.tag.key !== key && !found.includes(animal)) found.push(animal);
  };
  return {
    size: (): number => byForm.size,
    add(animal: A, { form, less }: Likeness): void {
      addTo(byForm, form, animal);
      for (const lesser of less) addTo(byLess, lesser, animal);
    },
    find(tag: Tag, { form, less }: Likeness, found: A[]): void {
      take(tag, byForm.get(form), found);
      take(tag, byLess.get(form), found);
      for (const lesser of less) take(tag, byForm.get(lesser), found);
    },
  };
}

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
