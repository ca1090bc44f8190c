import pow from "@stdlib/math-base-special-pow";
import { wilsonLimits } from "../statistics/wilsonLimits.ts";
import type { ShareWithLimits } from "./truePrevalence.ts";

/** One group of a share that is put together from several. */
export interface WeightedPart {
  /** What the group weighs; the weights sum to 1. */
  readonly weight: number;
  readonly lame: number;
  /** Above 0. */
  readonly seen: number;
  /** The part of the variance that is left when drawn without putting back: (N − n) / (N − 1), or 1 for an endless group. */
  readonly left: number;
}

/**
 * A share put together from groups by fixed weights, with its range.
 *
 * Two ranges are worked out, and the wider side of each is taken. One puts together the groups' own Wilson intervals,
 * as Newcombe does for two shares; for many small groups alone its low limit is too high. The other is Wilson's interval
 * of the whole for the effective number of sheep seen, as many as would give the same variance without groups if all
 * were alike; alone it is too narrow where a large group of which few were seen differs from the others. How often the
 * range holds the truth is worked out in docs/methods/benchmarking.md.
 *
 * @param parts one or more
 * @param z standard deviations either side
 * @source Zou & Donner 2008, Stat Med 27:1693; Korn & Graubard 1998, Surv Methodol 24:193 (effective number)
 * @example
 * weightedShare([{ weight: 0.5, lame: 1, seen: 10, left: 1 }, { weight: 0.5, lame: 3, seen: 10, left: 1 }], 1.96).share // → 0.2
 */
export function weightedShare(parts: readonly WeightedPart[], z: number): ShareWithLimits {
  let [sum, below, above, variance] = [0, 0, 0, 0];
  for (const { weight, lame, seen, left } of parts) {
    const own = lame / seen;
    sum += weight * own;
    if (left === 0) continue;
    const limits = wilsonLimits(lame, seen, z * Math.sqrt(left));
    below += pow(weight * (own - limits.low), 2);
    above += pow(weight * (limits.high - own), 2);
    variance += (weight * weight * left) / seen;
  }
  // Weights that sum to 1 but for the last digit must not pass it.
  const share = Math.min(sum, 1);
  const whole = variance === 0 ? { low: share, high: share } : wilsonLimits(share / variance, 1 / variance, z);
  return {
    share,
    low: Math.max(Math.min(share - Math.sqrt(below), whole.low), 0),
    high: Math.min(Math.max(share + Math.sqrt(above), whole.high), 1),
  };
}
