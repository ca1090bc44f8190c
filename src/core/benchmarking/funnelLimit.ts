import { binomialQuantile } from "../statistics/binomialQuantile.ts";
import { betweenCounts } from "./betweenCounts.ts";

/**
 * A funnel plot's limit for a flock of n sheep: the exact binomial one, put between two counts so that it changes
 * smoothly with n. Below 0 it is set to 0.
 *
 * @param p chance below the limit, 0 < p < 1
 * @param n sheep seen, whole number from 1
 * @param target the share expected, 0 to 1
 * @returns share
 * @source Spiegelhalter 2005, Stat Med 24:1185, A.1.1
 * @example
 * funnelLimit(0.025, 100, 0.05) // → 0.0061229314…
 */
export function funnelLimit(p: number, n: number, target: number): number {
  // With none or all expected lame there is nothing that varies.
  if (target === 0 || target === 1) return target;
  return betweenCounts(p, n, binomialQuantile(p, n, target));
}
