import exp from "@stdlib/math-base-special-exp";
import ln from "@stdlib/math-base-special-ln";
import log1p from "@stdlib/math-base-special-log1p";
import { deviance } from "./deviance.ts";
import { stirlingError } from "./stirlingError.ts";

/**
 * The chance of exactly x lame among n when each is lame with chance p (Loader 2000).
 *
 * Own code: the package `@stdlib/stats-base-dists-binomial-pmf` makes the bundle that a spreadsheet loads half
 * as large again, takes no fractions of a count, which the beta distribution needs, and is off by 2e-10
 * (relative) for ten million. Relative accuracy here about 1e-13 (counts to 1e7), against 40-digit arithmetic.
 *
 * @param x 0 to n, may be a fraction
 * @param n may be a fraction
 * @param p 0 to 1
 * @param q 1 − p, given apart so that a p near 1 keeps its digits
 * @example
 * binomialDensity(1, 2, 0.5) // → 0.5
 */
export function binomialDensity(x: number, n: number, p: number, q = 1 - p): number {
  const y = n - x;
  if (p === 0) return x === 0 ? 1 : 0;
  if (q === 0) return y === 0 ? 1 : 0;
  if (x < 0 || y < 0) return 0;
  if (x === 0) return exp(n * logOfShare(q, p));
  if (y === 0) return exp(n * logOfShare(p, q));
  const exponent = stirlingError(n) - stirlingError(x) - stirlingError(y) - deviance(x, n * p) - deviance(y, n * q);
  return exp(exponent) * Math.sqrt(n / (2 * Math.PI * x * y));
}

const logOfShare = (share: number, rest: number): number => (rest < 0.5 ? log1p(-rest) : ln(share));
