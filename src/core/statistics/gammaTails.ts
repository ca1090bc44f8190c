import { poissonDensity } from "./poissonDensity.ts";
import type { Tails } from "./tails.ts";

/**
 * Both tails of the gamma distribution (scale 1) at x: the regularized incomplete gamma functions.
 *
 * Own code: `@stdlib/math-base-special-gammainc` costs 29 kB (gzip). Series below, continued fraction above
 * (Abramowitz & Stegun 6.5.29, 6.5.31); the smaller tail is computed directly, relative accuracy about 1e-13 (a to 1e7).
 *
 * @param x above 0
 * @param a shape, above 0
 * @example
 * gammaTails(1, 1) // → { lower: 0.6321205588285577, upper: 0.36787944117144233, … }
 */
export function gammaTails(x: number, a: number): Tails {
  const density = poissonDensity(a, x);
  const slope = density * a;
  if (x < a + 1) {
    const lower = density * series(x, a);
    return { lower, upper: 1 - lower, slope };
  }
  const upper = (density * a) / fraction(x, a);
  return { lower: 1 - upper, upper, slope };
}

function series(x: number, a: number): number {
  let term = 1;
  let sum = 1;
  for (let k = 1; term > sum * 1e-17; k++) {
    term *= x / (a + k);
    sum += term;
  }
  return sum;
}

function fraction(x: number, a: number): number {
  let b = x + 1 - a;
  let c = 1e300;
  let d = 1 / b;
  let result = b;
  for (let k = 1; ; k++) {
    const numerator = -k * (k - a);
    b += 2;
    d = 1 / (numerator * d + b);
    c = b + numerator / c;
    const turn = d * c;
    result /= turn;
    if (Math.abs(turn - 1) < 3e-16) return result;
  }
}
