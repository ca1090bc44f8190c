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
export const effectiveSeen = (gathers: Gathers, confidence: number): number =>
  effectiveIn(gatherSpread(gathers), confidence);

/** The same for gathers of which the spread was found before. */
export const effectiveIn = (spread: GatherSpread, confidence: number): number =>
  spread.gathers < 2 ? spread.seen : effectiveOf(spread, confidence);

/**
 * The same for a spread that is known or supposed.
 *
 * @example
 * effectiveOf({ seen: 200, weighty: 2, inflation: 2 }, 0.95) // → 49.8…
 */
export function effectiveOf(spread: Pick<GatherSpread, "seen" | "weighty" | "inflation">, confidence: number): number {
  const { seen, weighty, inflation } = spread;
  const ratio = normalScore(confidence) / studentScore(confidence, priorGathers + weighty - 1);
  return (seen / inflation) * pow(ratio, 2);
}
