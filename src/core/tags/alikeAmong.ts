import { type Likeness, likeness } from "./likeness.ts";
import type { Tag } from "./tagKey.ts";

/** Something that is known of an animal. */
interface OfAnimal {
  readonly tag: Tag;
}

/**
 * Finds, among some animals, those that another tag may mean after a slip: see {@link likeness}.
 *
 * @param animals - each animal once
 * @returns asked with a tag: the animals that are alike and have another key; in no order
 * @example
 * alikeAmong([{ tag: { key: "042", shown: "042" } }])({ key: "O42", shown: "O42" }) // → [{ tag: … }]
 */
export function alikeAmong<A extends OfAnimal>(animals: Iterable<A>): (tag: Tag) => readonly A[] {
  const byForm = new Map<string, A[]>();
  const byLess = new Map<string, A[]>();
  for (const animal of animals) {
    const { form, less } = likeness(animal.tag);
    addTo(byForm, form, animal);
    for (const lesser of less) addTo(byLess, lesser, animal);
  }
  if (byForm.size === 0) return () => [];
  return (tag) => foundFor(tag, likeness(tag), byForm, byLess);
}

function addTo<A>(index: Map<string, A[]>, form: string, animal: A): void {
  const there = index.get(form);
  if (there === undefined) index.set(form, [animal]);
  else there.push(animal);
}

function foundFor<A extends OfAnimal>(
  { key }: Tag,
  { form, less }: Likeness,
  byForm: ReadonlyMap<string, readonly A[]>,
  byLess: ReadonlyMap<string, readonly A[]>,
): readonly A[] {
  const found = new Set<A>();
  const take = (animals: readonly A[] | undefined): void => {
    for (const animal of animals ?? []) if (animal.tag.key !== key) found.add(animal);
  };
  take(byForm.get(form));
  take(byLess.get(form));
  for (const lesser of less) take(byForm.get(lesser));
  return [...found];
}
