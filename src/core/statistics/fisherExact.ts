import { asUnlikelySum } from "./asUnlikelySum.ts";
import { type Draw, hypergeometricDensity } from "./hypergeometricDensity.ts";
import { hypergeometricTails } from "./hypergeometricTails.ts";

/**
 * Fisher's exact two-sided p for two shares: the chance of all tables with these totals that are no more likely than
 * the one observed.
 *
 * @param x1 lame among n1
 * @param x2 lame among n2
 * @returns 0 < p ≤ 1
 * @example
 * fisherExact(3, 4, 1, 4) // → 0.4857142857…
 */
export function fisherExact(x1: number, n1: number, x2: number, n2: number): number {
  const draw: Draw = { N: n1 + n2, M: x1 + x2, n: n1 };
  return asUnlikelySum({
    observed: x1,
    least: Math.max(0, draw.M - n2),
    most: Math.min(n1, draw.M),
    mode: Math.floor(((draw.M + 1) * (n1 + 1)) / (draw.N + 2)),
    density: (x) => hypergeometricDensity(x, draw),
    tails: (x) => hypergeometricTails(x, draw),
  });
}
