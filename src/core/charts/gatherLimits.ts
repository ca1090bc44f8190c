import { binomialQuantile } from "../distributions/binomialQuantile.ts";
import type { Interval } from "../prevalence/interval.ts";

/** Chance beyond a limit: that of three standard deviations of a normal value on one side. */
const exactTail = 0.00135;

/**
 * Exact limits for a gather of n sheep: the fewest and the most lame that are not rarer than 0.00135 on their side.
 *
 * @param n sheep seen
 * @param centre the share expected
 * @returns shares; a share equal to a limit is within
 * @example
 * exactLimits(50, 0.05) // → { low: 0, high: 0.16 }
 */
export const exactLimits = (n: number, centre: number): Interval => ({
  low: binomialQuantile(exactTail, n, centre).count / n,
  high: binomialQuantile(1 - exactTail, n, centre).count / n,
});

/**
 * The handbooks' usual limits, three standard deviations either side. A lower one below 0 means that there is none,
 * and is shown as 0; likewise 1 at the upper end.
 *
 * @param n sheep seen
 * @param centre the share expected
 * @returns shares
 * @source Shewhart 1931; NIST/SEMATECH e-Handbook of Statistical Methods 6.3.3.2
 * @example
 * threeSigmaLimits(50, 0.5) // → { low: 0.2878679656…, high: 0.7121320343… }
 */
export function threeSigmaLimits(n: number, centre: number): Interval {
  const reach = 3 * Math.sqrt((centre * (1 - centre)) / n);
  return { low: Math.max(centre - reach, 0), high: Math.min(centre + reach, 1) };
}

/** The kinds of limits, by the word a user types. */
export const gatherLimits = { exact: exactLimits, "3sigma": threeSigmaLimits } as const;

export type LimitKind = keyof typeof gatherLimits;
