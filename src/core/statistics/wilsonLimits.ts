import type { Interval } from "./interval.ts";

/**
 * Wilson's interval for a number of standard deviations, for callers that need many intervals at one confidence.
 *
 * @param x lame sheep, 0 to n
 * @param n sheep seen, above 0
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
