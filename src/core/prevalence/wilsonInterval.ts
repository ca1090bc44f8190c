import { normalScore } from "../distributions/normalScore.ts";
import type { Interval } from "./interval.ts";

/**
 * Wilson's score interval for a share, without any change at the ends.
 *
 * @param x lame sheep, 0 to n (a fraction is allowed where an effective number stands for a count)
 * @param n sheep seen, above 0
 * @param confidence 0 < confidence < 1
 * @returns shares
 * @source Wilson 1927, J Am Stat Assoc 22:209
 * @example
 * wilsonInterval(81, 263, 0.95) // → { low: 0.2552885199…, high: 0.3662095770… }
 */
export const wilsonInterval = (x: number, n: number, confidence: number): Interval =>
  wilsonLimits(x, n, normalScore(confidence));

/**
 * The same for a number of standard deviations, for callers that need many intervals at one confidence.
 *
 * @param z standard deviations either side, 0 or more
 * @example
 * wilsonLimits(0, 4, 2) // → { low: 0, high: 0.5 }
 */
export function wilsonLimits(x: number, n: number, z: number): Interval {
  const square = z * z;
  const root = z * Math.sqrt(square + (4 * x * (n - x)) / n);
  const middle = 2 * x + square;
  return {
    // The product of the two roots gives the lower one: their difference would lose the digits of a small share.
    low: x === 0 ? 0 : (2 * x * x) / (n * (middle + root)),
    high: x === n ? 1 : (middle + root) / (2 * (n + square)),
  };
}
