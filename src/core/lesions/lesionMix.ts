import { type CategoryShare, categoryMix } from "../prevalence/categoryMix.ts";
import { findLesion } from "./lesionName.ts";

/** Words that are no known lesion are counted here, never dropped. */
const notRecognised = "not recognised";

/**
 * How often each lesion occurs among the cases, by its standard name, most frequent first.
 *
 * @param words - the lesion of each case as it was written down
 * @throws nothing to report when there is no case
 * @example
 * lesionMix(["scald", "Footrot", "foot rot"], 0.95).map(({ name, cases }) => [name, cases])
 * // → [["footrot", 2], ["interdigital dermatitis", 1]]
 */
export const lesionMix = (words: readonly string[], confidence: number): readonly CategoryShare[] =>
  categoryMix(
    words.map((word) => findLesion(word) ?? notRecognised),
    confidence,
    "lesions",
  );
