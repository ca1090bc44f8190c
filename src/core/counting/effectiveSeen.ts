import pow from "@stdlib/math-base-special-pow";
import { normalScore } from "../statistics/normalScore.ts";
import { studentScore } from "../statistics/studentScore.ts";
import { type GatherSpread, gatherSpread, priorGathers } from "./gatherSpread.ts";
import type { Gathers } from "./gathersOf.ts";

/**
 * To how many separate looks at a sheep the gathers of one flock amount, when the long-run share is asked for.
 *
 * The sheep seen, divided by how many times wider the pooled share varies than by chance (gatherSpread), and reduced once
 * more because that was itself found from few gathers (Student's t in place of the normal score). One gather is taken as it
 * is: it tells of itself only.
 *
 * @param gathers counts, each with sheep seen
 * @param confidence 0 < confidence < 1
 * @returns sheep, a fraction, never more than were seen
 * @source Korn & Graubard 1998, Survey Methodology 24:193 (effective number with t)
 * @example
 * effectiveSeen({ lame: [4, 12], seen: [100, 100] }, 0.95) // → 24.5214141956…
 */
export function effectiveSeen(gathers: Gathers, confidence: number): number {
  const spread = gatherSpread(gathers);
  return gathers.seen.length < 2 ? spread.seen : effectiveOf(spread, confidence);
}

/**
 * The same for a spread that is known or supposed.
 *
 * @example
 * effectiveOf({ seen: 200, weighty: 2, inflation: 2 }, 0.95) // → 49.8…
 */
export function effectiveOf(spread: Omit<GatherSpread, "lame">, confidence: number): number {
  const { seen, weighty, inflation } = spread;
  const ratio = normalScore(confidence) / studentScore(confidence, priorGathers + weighty - 1);
  return (seen / inflation) * pow(ratio, 2);
}
