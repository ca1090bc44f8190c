import type { Interval } from "../statistics/interval.ts";
import { type IntervalMethod, proportionInterval } from "../statistics/proportionInterval.ts";
import { countedLooks, type LookChoice, type Looks } from "./countedLooks.ts";

export interface RangeChoice extends LookChoice {
  readonly method?: IntervalMethod | undefined;
}

/**
 * The range of the share lame from one gather or several.
 *
 * Several gathers: the range of the long-run share, from the number of separate looks to which they amount (effectiveSeen).
 *
 * @param lame lame sheep a row
 * @param seen sheep seen a row
 * @returns shares
 * @throws Problem as countedLooks
 * @example
 * prevalenceRange([4, 12], [100, 100], { confidence: 0.95, spread: "chance" }) // → { low: 0.0498405858…, high: 0.1259894882… }
 */
export function prevalenceRange(lame: readonly number[], seen: readonly number[], choice: RangeChoice): Interval {
  return rangeOfLooks(countedLooks(lame, seen, choice), choice);
}

/** The same for rows that are pooled already. */
export function rangeOfLooks(
  { share, lame: x, seen: n, effective }: Omit<Looks, "gathers">,
  choice: RangeChoice,
): Interval {
  // The flock's size is held to the sheep seen; a fraction of a sheep has no place in its exact range.
  if (effective === n) return proportionInterval(x, n, choice);
  return proportionInterval(share * effective, effective, choice);
}
