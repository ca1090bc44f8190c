import type { Interval } from "../statistics/interval.ts";

/**
 * A share beyond its limits, in words; undefined within them.
 *
 * @example
 * limitSignal(0.2, { low: 0, high: 0.18 }) // → "above the high limit"
 */
export function limitSignal(share: number, { low, high }: Interval): string | undefined {
  if (share > high) return "above the high limit";
  if (share < low) return "below the low limit";
  return undefined;
}
