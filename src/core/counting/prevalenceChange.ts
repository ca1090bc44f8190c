import hypot from "@stdlib/math-base-special-hypot";
import { fisherExact } from "../statistics/fisherExact.ts";
import type { Interval } from "../statistics/interval.ts";
import { wilsonInterval } from "../statistics/wilsonInterval.ts";
import { pooledPrevalence } from "./pooledPrevalence.ts";

/** Lame and seen sheep, a row each. */
export interface CountColumns {
  readonly lame: readonly number[];
  readonly seen: readonly number[];
}

export interface PrevalenceChange extends Interval {
  /** Share after less share before, −1 to 1: below 0 is better. */
  readonly change: number;
  /** Fisher's exact two-sided chance of a difference this unlikely when nothing changed. */
  readonly p: number;
}

/**
 * How much the share lame changed, with Newcombe's hybrid score interval (his method 10) and Fisher's exact p.
 *
 * @param before counts before
 * @param after counts after
 * @param confidence 0 < confidence < 1
 * @returns difference of shares with its limits, and p
 * @throws Problem when a row has more lame than seen; #N/A when no sheep were seen before or after
 * @source Newcombe 1998, Stat Med 17:873
 * @example
 * prevalenceChange({ lame: [48], seen: [80] }, { lame: [56], seen: [70] }, 0.95)
 * // → { change: 0.2, low: 0.0524314724…, high: 0.3338726540…, p: 0.0125211297… }
 */
export function prevalenceChange(before: CountColumns, after: CountColumns, confidence: number): PrevalenceChange {
  const old = pooledPrevalence(before.lame, before.seen, { lame: "lame_before", seen: "seen_before" });
  const now = pooledPrevalence(after.lame, after.seen, { lame: "lame_after", seen: "seen_after" });
  const oldRange = wilsonInterval(old.lame, old.seen, confidence);
  const nowRange = wilsonInterval(now.lame, now.seen, confidence);
  const change = now.share - old.share;
  return {
    change,
    low: change - hypot(now.share - nowRange.low, oldRange.high - old.share),
    high: change + hypot(nowRange.high - now.share, old.share - oldRange.low),
    p: fisherExact(now.lame, now.seen, old.lame, old.seen),
  };
}
