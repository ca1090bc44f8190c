import { betaTails } from "./betaTails.ts";

/**
 * The chance of a value of Student's t distribution at least as far from the middle as `t`, on either side.
 *
 * @param t in standard errors
 * @param freedom degrees of freedom, above 0
 * @source Student 1908, Biometrika 6:1
 * @example
 * studentTwoSided(2.7764451051977987, 4) // → 0.05
 */
export function studentTwoSided(t: number, freedom: number): number {
  const square = t * t;
  if (square === 0) return 1;
  return betaTails(freedom / (freedom + square), freedom / 2, 0.5, square / (freedom + square)).lower;
}
