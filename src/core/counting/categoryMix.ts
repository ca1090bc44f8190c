import { nothingToReport } from "../../cells/problem.ts";
import { normalScore } from "../statistics/normalScore.ts";
import { wilsonLimits } from "../statistics/wilsonLimits.ts";

/** How many of the cases were of one kind. */
export interface CategoryShare {
  readonly name: string;
  readonly cases: number;
  /** Share of all the cases, 0 to 1. */
  readonly share: number;
  readonly low: number;
  readonly high: number;
}

/**
 * How often each name occurs, most frequent first, ties in order of first appearance, each share with its Wilson interval.
 *
 * @param names one a case
 * @param confidence 0 < confidence < 1
 * @param argument the worksheet argument that the names came from
 * @throws #N/A when there is no case
 * @example
 * categoryMix(["scald", "footrot", "footrot"], 0.95, "lesions").map(({ name, cases }) => [name, cases])
 * // → [["footrot", 2], ["scald", 1]]
 */
export function categoryMix(names: readonly string[], confidence: number, argument: string): readonly CategoryShare[] {
  if (names.length === 0) throw nothingToReport("there is no case to count", { argument });
  const cases = new Map<string, number>();
  for (const name of names) cases.set(name, (cases.get(name) ?? 0) + 1);
  const z = normalScore(confidence);
  // The sort is stable, which keeps ties in order of first appearance.
  return [...cases]
    .sort(([, one], [, other]) => other - one)
    .map(([name, count]) => ({
      name,
      cases: count,
      share: count / names.length,
      ...wilsonLimits(count, names.length, z),
    }));
}
