import { hypergeometricTails } from "./hypergeometricTails.ts";
import type { Interval } from "./interval.ts";

/**
 * The exact interval for the share lame in a flock of known size, part of which was looked at: every number of
 * lame sheep in the flock that neither tail of the hypergeometric distribution speaks against.
 *
 * A tail of exactly (1 − confidence) / 2 does not yet speak against it, so the interval never covers less often
 * than `confidence`. The whole flock seen gives the share itself.
 *
 * @param x lame sheep seen, whole number from 0 to n
 * @param n sheep seen, whole number from 1 to N
 * @param N sheep in the flock
 * @param confidence 0 < confidence < 1
 * @returns shares of the flock (lame sheep in the flock / N)
 * @source Buonaccorsi 1987, Am Stat 41:215
 * @example
 * finiteFlockInterval(3, 20, 100, 0.95) // → { low: 0.05, high: 0.35 }
 */
export function finiteFlockInterval(x: number, n: number, N: number, confidence: number): Interval {
  const tail = (1 - confidence) / 2;
  // The most lame the flock may hold leaves the fewest sound, seen from the sound sheep.
  return { low: fewest(x, n, N, tail) / N, high: (N - fewest(n - x, n, N, tail)) / N };
}

/** Rounding must not push a tail that is exactly at the limit over it. */
const slack = 1 - 1e-9;

/** The fewest lame sheep in the flock with which seeing x or more of them is not too unlikely. */
function fewest(x: number, n: number, N: number, tail: number): number {
  let low = x;
  let high = N - n + x;
  while (low < high) {
    const M = Math.floor((low + high) / 2);
    if (hypergeometricTails(x, { N, M, n }).upper >= tail * slack) high = M;
    else low = M + 1;
  }
  return low;
}
