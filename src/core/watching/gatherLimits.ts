import { betaBinomialQuantiles } from "../statistics/betaBinomialQuantiles.ts";
import { binomialQuantile } from "../statistics/binomialQuantile.ts";
import type { Interval } from "../statistics/interval.ts";

/** Chance beyond a limit: that of three standard deviations of a normal value on one side. */
const exactTail = 0.00135;

/**
 * Exact limits for a gather of n sheep: the fewest and the most lame that are not rarer than 0.00135 on their side.
 *
 * @param n sheep seen
 * @param centre the share expected
 * @param inflation how many times wider the count varies than by chance; then the chance of being lame itself varies from
 *   gather to gather (beta-binomial)
 * @returns shares; a share equal to a limit is within
 * @example
 * exactLimits(50, 0.05) // → { low: 0, high: 0.16 }
 */
export function exactLimits(n: number, centre: number, inflation = 1): Interval {
  if (inflation <= 1 || n === 1 || centre === 0 || centre === 1) {
    return {
      low: binomialQuantile(exactTail, n, centre).count / n,
      high: binomialQuantile(1 - exactTail, n, centre).count / n,
    };
  }
  // At n times the variance of chance a gather would have none or all lame.
  return betaBinomialQuantiles(exactTail, { n, share: centre, inflation: Math.min(inflation, 1 + 0.99 * (n - 1)) });
}

/**
 * The handbooks' usual limits, three standard deviations either side. A lower one below 0 means that there is none,
 * and is shown as 0; likewise 1 at the upper end.
 *
 * @param n sheep seen
 * @param centre the share expected
 * @param inflation how many times wider the count varies than by chance
 * @returns shares
 * @source Shewhart 1931; NIST/SEMATECH e-Handbook of Statistical Methods 6.3.3.2; Laney 2002, Quality Engineering 14:531
 * @example
 * threeSigmaLimits(50, 0.5) // → { low: 0.2878679656…, high: 0.7121320343… }
 */
export function threeSigmaLimits(n: number, centre: number, inflation = 1): Interval {
  const reach = 3 * Math.sqrt((inflation * centre * (1 - centre)) / n);
  return { low: Math.max(centre - reach, 0), high: Math.min(centre + reach, 1) };
}

/** The kinds of limits, by the word a user types. */
export const gatherLimits = { exact: exactLimits, "3sigma": threeSigmaLimits } as const;

export type LimitKind = keyof typeof gatherLimits;
