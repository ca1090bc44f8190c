import exp from "@stdlib/math-base-special-exp";
import expm1 from "@stdlib/math-base-special-expm1";
import ln from "@stdlib/math-base-special-ln";
import { betaQuantile } from "./betaQuantile.ts";
import type { Interval } from "./interval.ts";

/**
 * The exact (Clopper–Pearson) interval for a share: every share that neither tail of the binomial
 * distribution speaks against. Never covers less often than `confidence`.
 *
 * @param x lame sheep, whole number from 0 to n
 * @param n sheep seen, whole number from 1
 * @param confidence 0 < confidence < 1
 * @returns shares
 * @source Clopper & Pearson 1934, Biometrika 26:404
 * @example
 * exactInterval(0, 20, 0.95) // → { low: 0, high: 0.1684334710… }
 */
export function exactInterval(x: number, n: number, confidence: number): Interval {
  const tail = (1 - confidence) / 2;
  return { low: lowLimit(x, n, tail), high: highLimit(x, n, tail) };
}

const lowLimit = (x: number, n: number, tail: number): number => {
  if (x === 0) return 0;
  if (x === n) return exp(ln(tail) / n);
  return betaQuantile("lower", tail, x, n - x + 1);
};

const highLimit = (x: number, n: number, tail: number): number => {
  if (x === n) return 1;
  if (x === 0) return -expm1(ln(tail) / n);
  return betaQuantile("upper", tail, x + 1, n - x);
};
