import { alikeIndex } from "../words/alikeAmong.ts";
import type { Tag } from "../words/tagKey.ts";

/** An animal that has too few of something to be listed, cases or treatments. */
export interface TooFew {
  readonly tag: Tag;
  readonly count: number;
}

/** Two tags that would have enough together, and are alike. */
export interface TwoTags {
  readonly tag: string;
  /** In words: which other, and how many they have together. */
  readonly why: string;
}

/**
 * The animals that have enough only together with another whose tag is alike: they may be one animal. Each pair once.
 *
 * @param animals - each with too few by itself
 * @param of - what is counted
 * @example
 * enoughTogether([{ tag: tag("042"), count: 1 }, { tag: tag("42"), count: 1 }], 2, "cases")
 * // → [{ tag: "42", why: "it may be 042: 2 cases together; look at both tags" }]
 */
export function enoughTogether(animals: Iterable<TooFew>, atLeast: number, of: string): readonly TwoTags[] {
  const index = alikeIndex<TooFew>();
  const found: TwoTags[] = [];
  for (const animal of animals) {
    for (const other of index.meet(animal)) {
      const together = animal.count + other.count;
      if (together < atLeast) continue;
      found.push({
        tag: animal.tag.shown,
        why: `it may be ${other.tag.shown}: ${together} ${of} together; look at both tags`,
      });
      break;
    }
  }
  return found;
}
