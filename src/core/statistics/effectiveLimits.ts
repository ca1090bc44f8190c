import pow from "@stdlib/math-base-special-pow";
import { exactInterval } from "./exactInterval.ts";
import type { Interval } from "./interval.ts";
import { normalScore } from "./normalScore.ts";
import { studentScore } from "./studentScore.ts";

/**
 * Limits for a share of which only the variance is known: the exact (Clopper–Pearson) ones for as many animals, each
 * watched to the end, as would give that variance; fewer by Student's t, since the variance was itself found from them.
 *
 * @param share above 0 and below 1
 * @param variance of the share, 0 or more
 * @param animals of which the share was found; they never amount to more
 * @param confidence 0 < confidence < 1
 * @source Korn & Graubard 1998, Survey Methodology 24:193 (effective number with t)
 * @example
 * effectiveLimits(0.5, 0.0125, 20, 0.95) // → { low: 0.2572…, high: 0.7427… }
 */
export function effectiveLimits(share: number, variance: number, animals: number, confidence: number): Interval {
  const worth = Math.min((share * (1 - share)) / variance, animals);
  const ratio = normalScore(confidence) / studentScore(confidence, Math.max(worth - 1, leastFreedom));
  const effective = worth * pow(ratio, 2);
  return exactInterval(share * effective, effective, confidence);
}

// Two animals have one degree of freedom; with fewer than that there is no t.
const leastFreedom = 1;
