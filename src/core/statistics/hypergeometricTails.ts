import { type Draw, hypergeometricDensity } from "./hypergeometricDensity.ts";

/**
 * Both tails of the hypergeometric distribution at x.
 *
 * Sums away from the middle, from the largest term on, until terms no longer count: the smaller tail keeps its
 * relative accuracy (about 1e-13). `@stdlib/stats-base-dists-hypergeometric-cdf` sums every term from the far end.
 *
 * @param x whole number
 * @param draw { N: sheep in the flock, M: lame in it, n: drawn }
 * @returns lower: chance of x or fewer lame; upper: chance of x or more
 * @example
 * hypergeometricTails(1, { N: 2, M: 1, n: 1 }) // → { lower: 1, upper: 0.5 }
 */
export function hypergeometricTails(x: number, draw: Draw): { readonly lower: number; readonly upper: number } {
  const { N, M, n } = draw;
  // 0 outside what the draw can hold; then the nearer tail is 0 too.
  const density = hypergeometricDensity(x, draw);
  if (x * N <= n * M) {
    const lower = density === 0 ? 0 : sumDown(x, density, draw);
    return { lower, upper: 1 - lower + density };
  }
  const upper = density === 0 ? 0 : sumUp(x, density, draw);
  return { lower: 1 - upper + density, upper };
}

const sumDown = (x: number, density: number, { N, M, n }: Draw): number => {
  let sum = density;
  let term = density;
  for (let k = x; k > 0 && term > sum * 1e-17; k--) {
    term *= (k * (N - M - n + k)) / ((M - k + 1) * (n - k + 1));
    sum += term;
  }
  return sum;
};

const sumUp = (x: number, density: number, { N, M, n }: Draw): number => {
  let sum = density;
  let term = density;
  for (let k = x; term > sum * 1e-17; k++) {
    term *= ((M - k) * (n - k)) / ((k + 1) * (N - M - n + k + 1));
    sum += term;
  }
  return sum;
};
