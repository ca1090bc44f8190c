import { binomialDensity } from "./binomialDensity.ts";
import type { Tails } from "./tails.ts";

/**
 * Both tails of the beta distribution at x: the regularized incomplete beta function and its complement.
 *
 * Own code: `@stdlib/math-base-special-betainc` costs more than half of the bundle that a spreadsheet loads.
 * The continued fraction of Didonato & Morris 1992 (ACM TOMS 18:360) behind a saddle-point density; the smaller
 * tail is always computed directly. Relative accuracy of the smaller tail about 3e-13 (parameters to 1e7), against
 * 40-digit arithmetic.
 *
 * @param x 0 to 1
 * @param a above 0
 * @param b above 0
 * @param y 1 − x, given apart so that an x near 1 keeps its digits
 * @example
 * betaTails(0.25, 1, 1) // → { lower: 0.25, upper: 0.75, … }
 */
export function betaTails(x: number, a: number, b: number, y = 1 - x): Tails {
  const slope = (binomialDensity(a, a + b, x, y) * a * b) / (a + b);
  if (x * (a + b + 2) < a + 1) {
    const lower = slope * fraction(x, y, a, b);
    return { lower, upper: 1 - lower, slope };
  }
  const upper = slope * fraction(y, x, b, a);
  return { lower: 1 - upper, upper, slope };
}

// Convergents A/B by the usual three-term recurrence, scaled so that B stays 1.
function fraction(x: number, y: number, a: number, b: number): number {
  // a − (a + b) x, from whichever side does not cancel.
  const c = 1 + (x > y ? (a + b) * y - b : a - (a + b) * x);
  const firstB = 1 + 1 / a;
  let previousA = 0;
  let previousB = 1;
  let currentB = c / firstB;
  let ratio = 1 / currentB;
  let currentA = 1;
  let p = 1;
  for (let n = 1; ; n++) {
    const s = a + 2 * n - 1;
    const w = n * (b - n) * x;
    const e = a / s;
    const alpha = p * (p + b / a) * e * e * w * x;
    const t = n / a;
    const beta = n + w / s + ((t + 1) / (firstB + 2 * t)) * (c + n * (y + 1));
    p = t + 1;
    const nextA = alpha * previousA + beta * currentA;
    const nextB = alpha * previousB + beta * currentB;
    const next = nextA / nextB;
    if (Math.abs(next - ratio) <= 3e-16 * next) return next;
    ratio = next;
    previousA = currentA / nextB;
    previousB = currentB / nextB;
    currentA = next;
    currentB = 1;
  }
}
