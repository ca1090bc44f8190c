import { betaQuantile } from "./betaQuantile.ts";
import type { Interval } from "./interval.ts";

/**
 * The interval from Jeffreys' prior: equal tails of Beta(x + ½, n − x + ½), with the end rule that none lame
 * gives a lower limit of 0 and all lame an upper limit of 1.
 *
 * @param x lame sheep, whole number from 0 to n
 * @param n sheep seen, whole number from 1
 * @param confidence 0 < confidence < 1
 * @returns shares
 * @source Brown, Cai & DasGupta 2001, Stat Sci 16:101
 * @example
 * jeffreysInterval(0, 20, 0.95) // → { low: 0, high: 0.1166389829… }
 */
export function jeffreysInterval(x: number, n: number, confidence: number): Interval {
  const tail = (1 - confidence) / 2;
  const [a, b] = [x + 0.5, n - x + 0.5];
  return {
    low: x === 0 ? 0 : betaQuantile("lower", tail, a, b),
    high: x === n ? 1 : betaQuantile("upper", tail, a, b),
  };
}
