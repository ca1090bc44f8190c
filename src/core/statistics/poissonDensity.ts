import exp from "@stdlib/math-base-special-exp";
import { deviance } from "./deviance.ts";
import { stirlingError } from "./stirlingError.ts";

/**
 * The chance of exactly x cases where m are expected (Loader 2000).
 *
 * @param x 0 or more, may be a fraction
 * @param m above 0
 * @example
 * poissonDensity(0, 1) // → 0.36787944117144233
 */
export function poissonDensity(x: number, m: number): number {
  if (x === 0) return exp(-m);
  return exp(-stirlingError(x) - deviance(x, m)) / Math.sqrt(2 * Math.PI * x);
}
