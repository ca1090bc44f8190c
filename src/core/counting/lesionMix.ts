import { lesionWritten } from "../words/lesionWritten.ts";
import { type CategoryShare, categoryMix } from "./categoryMix.ts";

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
    const name = lesionWritten(word);
    names.set(word, name);
    return name;
  };
  return categoryMix(words.map(nameOf), confidence, "lesions");
}
