import { betaTails } from "./betaTails.ts";
import { binomialDensity } from "./binomialDensity.ts";

/**
 * Both tails of the binomial distribution at x, by way of the beta distribution: quick for any n.
 *
 * @param x whole number
 * @param n whole number from 1
 * @param p 0 to 1
 * @returns lower: chance of x or fewer; upper: chance of x or more
 * @example
 * binomialTails(1, 2, 0.5) // → { lower: 0.75, upper: 0.75 }
 */
export function binomialTails(x: number, n: number, p: number): { readonly lower: number; readonly upper: number } {
  if (x < 0) return { lower: 0, upper: 1 };
  if (x > n) return { lower: 1, upper: 0 };
  if (p === 0 || p === 1) return { lower: x >= n * p ? 1 : 0, upper: x <= n * p ? 1 : 0 };
  if (x === 0) return { lower: binomialDensity(0, n, p), upper: 1 };
  if (x === n) return { lower: 1, upper: binomialDensity(n, n, p) };
  return x <= n * p
    ? withDensity("lower", betaTails(p, x + 1, n - x).upper, binomialDensity(x, n, p))
    : withDensity("upper", betaTails(p, x, n - x + 1).lower, binomialDensity(x, n, p));
}

// The two tails share the count x itself.
const withDensity = (known: "lower" | "upper", tail: number, density: number) =>
  known === "lower" ? { lower: tail, upper: 1 - tail + density } : { lower: 1 - tail + density, upper: tail };
