import { nothingToReport } from "../../cells/problem.ts";
import { sumOf } from "../statistics/sumOf.ts";
import { type CountNames, checkCounts, usualNames } from "./checkCounts.ts";

/** Lame sheep among the sheep seen. */
export interface Prevalence {
  readonly lame: number;
  readonly seen: number;
  /** lame / seen, 0 to 1. */
  readonly share: number;
}

/**
 * The share of the sheep seen that were lame, all rows together.
 *
 * @param lame lame sheep a row, whole numbers from 0
 * @param seen sheep seen a row, same length
 * @param names the arguments' names for messages
 * @throws Problem when a row has more lame than seen; #N/A when no sheep were seen at all
 * @example
 * pooledPrevalence([1, 3], [10, 10]) // → { lame: 4, seen: 20, share: 0.2 }
 */
export function pooledPrevalence(
  lame: ArrayLike<number>,
  seen: ArrayLike<number>,
  names: CountNames = usualNames,
): Prevalence {
  checkCounts(lame, seen, names);
  const total = { lame: sumOf(lame), seen: sumOf(seen) };
  if (total.seen === 0) throw nothingToReport("no sheep were seen, so there is no share", { argument: names.seen });
  return { ...total, share: total.lame / total.seen };
}
