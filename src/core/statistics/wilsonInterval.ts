import type { Interval } from "./interval.ts";
import { normalScore } from "./normalScore.ts";
import { wilsonLimits } from "./wilsonLimits.ts";

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
