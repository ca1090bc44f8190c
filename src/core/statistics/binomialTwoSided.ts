import { asUnlikelySum } from "./asUnlikelySum.ts";
import { binomialDensity } from "./binomialDensity.ts";
import { binomialTails } from "./binomialTails.ts";

/**
 * The exact two-sided p of a binomial count: the chance of every count no more likely than x.
 *
 * @param x whole number from 0 to n
 * @param n whole number from 1
 * @param share expected, 0 < share < 1
 * @returns 0 < p ≤ 1
 * @example
 * binomialTwoSided(0, 2, 0.5) // → 0.5
 */
export const binomialTwoSided = (x: number, n: number, share: number): number =>
  asUnlikelySum({
    observed: x,
    least: 0,
    most: n,
    mode: Math.min(Math.floor((n + 1) * share), n),
    density: (count) => binomialDensity(count, n, share),
    tails: (count) => binomialTails(count, n, share),
  });
