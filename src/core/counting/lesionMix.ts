import { readLesion } from "../words/readLesion.ts";
import { showLesion } from "../words/showLesion.ts";
import { type CategoryShare, categoryMix } from "./categoryMix.ts";

/** Words that are no known lesion are counted here, never dropped. */
const notRecognised = "not recognised";

/**
 * How often each lesion occurs among the cases, by its standard name, most frequent first.
 *
 * Each case counts once: of several lesions the gravest. One that was written down with doubt has a line of its own, so
 * that no doubtful case is counted as sure and none is lost.
 *
 * @param words - the lesion of each case as it was written down
 * @throws nothing to report when there is no case
 * @example
 * lesionMix(["scald", "Footrot", "foot rot"], 0.95).map(({ name, cases }) => [name, cases])
 * // → [["footrot", 2], ["interdigital dermatitis", 1]]
 */
export function lesionMix(words: readonly string[], confidence: number): readonly CategoryShare[] {
  const names = new Map<string, string>();
  const nameOf = (word: string): string => {
    const before = names.get(word);
    if (before !== undefined) return before;
    const read = readLesion(word);
    const name = read === undefined ? notRecognised : showLesion({ lesion: read.lesion, sure: read.sure, also: [] });
    names.set(word, name);
    return name;
  };
  return categoryMix(words.map(nameOf), confidence, "lesions");
}
