import { gammaQuantile } from "./gammaQuantile.ts";

/**
 * How many standard deviations either side of the middle hold the share `confidence` of a normal distribution.
 *
 * The square of a normal value is gamma distributed, which spares a second set of functions
 * (`@stdlib/stats-base-dists-normal-quantile` costs 9 kB gzip). Relative accuracy about 1e-15.
 *
 * @param confidence 0 < confidence < 1
 * @example
 * normalScore(0.95) // → 1.959963984540054
 */
export function normalScore(confidence: number): number {
  const square =
    confidence < 0.5 ? gammaQuantile("lower", confidence, 0.5) : gammaQuantile("upper", 1 - confidence, 0.5);
  return Math.sqrt(2 * square);
}
