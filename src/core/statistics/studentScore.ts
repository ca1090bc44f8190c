import { betaQuantile } from "./betaQuantile.ts";

/**
 * How many standard errors either side of the middle hold the share `confidence` of Student's t distribution, whose
 * spread was itself found from so many degrees of freedom.
 *
 * @param confidence 0 < confidence < 1
 * @param freedom degrees of freedom, above 0, may be a fraction
 * @source Student 1908, Biometrika 6:1
 * @example
 * studentScore(0.95, 4) // → 2.7764451051977…
 */
export function studentScore(confidence: number, freedom: number): number {
  // freedom / (freedom + t²) follows a beta distribution.
  const part = betaQuantile("lower", 1 - confidence, freedom / 2, 0.5);
  const rest = betaQuantile("upper", 1 - confidence, 0.5, freedom / 2);
  return Math.sqrt((freedom * rest) / part);
}
