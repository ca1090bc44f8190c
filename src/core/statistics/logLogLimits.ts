import exp from "@stdlib/math-base-special-exp";
import ln from "@stdlib/math-base-special-ln";
import pow from "@stdlib/math-base-special-pow";
import type { Interval } from "./interval.ts";

/**
 * Limits for a share on the log(−log) scale, which stay within 0 and 1.
 *
 * @param share 0 to 1
 * @param variance of the share
 * @param z standard deviations either side
 * @returns undefined for a share of 0 or 1, where the scale has no place
 * @source Kalbfleisch & Prentice 1980, The statistical analysis of failure time data
 * @example
 * logLogLimits(0.5, 0.125, 1.959963984540054) // → { low: 0.0059830876…, high: 0.9104100848… }
 */
export function logLogLimits(share: number, variance: number, z: number): Interval | undefined {
  if (share <= 0 || share >= 1) return undefined;
  const spread = exp((z * Math.sqrt(variance)) / (-ln(share) * share));
  return { low: pow(share, spread), high: pow(share, 1 / spread) };
}
