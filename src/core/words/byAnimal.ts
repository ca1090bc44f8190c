import type { Tag } from "./tagKey.ts";

/** Something that is known of each animal. */
export interface ByAnimal<V> {
  /** In the order in which animals were put in. */
  readonly values: readonly V[];
  readonly get: (tag: Tag) => V | undefined;
  /** @param tag - of an animal of which nothing is known yet */
  readonly set: (tag: Tag, value: V) => void;
}

/**
 * A map by animal that is quicker than one by key where a column of tags was read: a spelling comes in many rows, and its
 * number in the column leads to what is known of the animal without a look at the text, which lies elsewhere in memory.
 * Keys are looked at only once a tag is met that is not sure to be another animal than those before.
 *
 * @example
 * byAnimal().get(tag("042")) // → undefined
 */
export function byAnimal<V>(): ByAnimal<V> {
  const values: V[] = [];
  // Those that no key was needed for yet.
  const animals: Tag[] = [];
  let byKey: Map<string, V> | undefined;
  const keyed = (): Map<string, V> => {
    byKey ??= new Map(animals.map((tag, at) => [tag.key, values[at] as V]));
    return byKey;
  };
  const isAnother = ({ apart }: Tag): boolean =>
    byKey === undefined && (animals.length === 0 || (apart !== undefined && animals[0]?.apart === apart));
  const tags: Tag[] = [];
  const ofSpelling: V[] = [];
  const note = (tag: Tag, spelling: number, value: V): void => {
    tags[spelling] = tag;
    ofSpelling[spelling] = value;
  };
  return {
    values,
    get(tag) {
      const { spelling } = tag;
      // Spellings of another column have the same numbers, so the tag itself is looked at.
      if (spelling !== undefined && tags[spelling] === tag) return ofSpelling[spelling];
      if (isAnother(tag)) return undefined;
      const value = keyed().get(tag.key);
      if (value !== undefined && spelling !== undefined) note(tag, spelling, value);
      return value;
    },
    set(tag, value) {
      if (isAnother(tag)) animals.push(tag);
      else keyed().set(tag.key, value);
      values.push(value);
      if (tag.spelling !== undefined) note(tag, tag.spelling, value);
    },
  };
}
