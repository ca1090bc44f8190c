import type { BinomialQuantile } from "../statistics/binomialQuantile.ts";

/**
 * The share at which a smooth limit of a funnel lies, from the first count up to which the chance is at least `p`.
 * Below 0 it is set to 0.
 *
 * @source Spiegelhalter 2005, Stat Med 24:1185, A.1.1
 * @example
 * betweenCounts(0.5, 10, { count: 5, upTo: 0.5, density: 0.2 }) // → 0.5
 */
export const betweenCounts = (p: number, n: number, { count, upTo, density }: BinomialQuantile): number =>
  Math.max((count - (upTo - p) / density) / n, 0);
