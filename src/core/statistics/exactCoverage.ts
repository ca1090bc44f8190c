import { binomialDensity } from "./binomialDensity.ts";
import type { Interval } from "./interval.ts";

/**
 * How often an interval method covers the truth: worked out over every possible count, not simulated.
 *
 * @param intervals the method's interval for 0, 1, … n lame among n seen
 * @param share the true share
 * @returns chance that the interval holds `share`
 * @example
 * exactCoverage([{ low: 0, high: 0.9 }, { low: 0.1, high: 1 }], 0.05) // → 0.95
 */
export function exactCoverage(intervals: readonly Interval[], share: number): number {
  const n = intervals.length - 1;
  return intervals.reduce(
    (sum, { low, high }, x) => (low <= share && share <= high ? sum + binomialDensity(x, n, share) : sum),
    0,
  );
}
