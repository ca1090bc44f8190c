import hypot from "@stdlib/math-base-special-hypot";
import { fisherExact } from "../statistics/fisherExact.ts";
import type { Interval } from "../statistics/interval.ts";
import { wilsonInterval } from "../statistics/wilsonInterval.ts";
import type { Spread } from "./countedLooks.ts";
import { effectiveOfOne } from "./effectiveOfOne.ts";
import { effectiveSeen } from "./effectiveSeen.ts";
import { type Gathers, gathersOf } from "./gathersOf.ts";
import { type Prevalence, pooledPrevalence } from "./pooledPrevalence.ts";

/** Lame and seen sheep, a row each. */
export interface CountColumns {
  readonly lame: readonly number[];
  readonly seen: readonly number[];
}

export interface PrevalenceChange extends Interval {
  /** Share after less share before, −1 to 1: below 0 is better. */
  readonly change: number;
  /** How often a difference this unlikely comes when nothing changed. */
  readonly p: number;
}

/**
 * How much the share lame changed, with Newcombe's hybrid score interval (his method 10), made of the Wilson intervals of
 * the two times.
 *
 * One gather each time: p is Fisher's exact. Several gathers before or after: the Wilson intervals are those of as many
 * separate looks as the gathers amount to (effectiveSeen, effectiveOfOne), and p belongs to the range: 0 lies on the edge of the range
 * for the confidence 1 − p. As confidences near 1 have no more digits, p is not told below 1e-15.
 *
 * @param before counts before
 * @param after counts after
 * @param confidence 0 < confidence < 1
 * @param spread whether several gathers count as such, as they do unless said, or all looks as separate
 * @returns difference of shares with its limits, and p
 * @throws Problem when a row has more lame than seen; #N/A when no sheep were seen before or after
 * @source Newcombe 1998, Stat Med 17:873
 * @example
 * prevalenceChange({ lame: [48], seen: [80] }, { lame: [56], seen: [70] }, 0.95)
 * // → { change: 0.2, low: 0.0524314724…, high: 0.3338726540…, p: 0.0125211297… }
 */
export function prevalenceChange(
  before: CountColumns,
  after: CountColumns,
  confidence: number,
  spread?: Spread,
): PrevalenceChange {
  const old = pooledPrevalence(before.lame, before.seen, { lame: "lame_before", seen: "seen_before" });
  const now = pooledPrevalence(after.lame, after.seen, { lame: "lame_after", seen: "seen_after" });
  const [oldGathers, nowGathers] = [before, after].map(({ lame, seen }) => gathersOf(lame, seen)) as [Gathers, Gathers];
  const change = now.share - old.share;
  const several = spread !== "chance" && (oldGathers.seen.length > 1 || nowGathers.seen.length > 1);
  const rangeAt = (level: number): Interval => {
    const oldRange = rangeOf(old, several ? effectiveOfAll(oldGathers, level) : old.seen, level);
    const nowRange = rangeOf(now, several ? effectiveOfAll(nowGathers, level) : now.seen, level);
    return {
      low: change - hypot(now.share - nowRange.low, oldRange.high - old.share),
      high: change + hypot(nowRange.high - now.share, old.share - oldRange.low),
    };
  };
  const p = several ? edgeOf(rangeAt, change) : fisherExact(now.lame, now.seen, old.lame, old.seen);
  return { change, ...rangeAt(confidence), p };
}

/** One gather set against several speaks for the long run too. */
const effectiveOfAll = (gathers: Gathers, confidence: number): number =>
  gathers.seen.length === 1 ? effectiveOfOne(gathers.seen[0] ?? 0, confidence) : effectiveSeen(gathers, confidence);

const rangeOf = ({ lame, seen, share }: Prevalence, effective: number, confidence: number): Interval =>
  wilsonInterval(effective === seen ? lame : share * effective, effective, confidence);

const leastP = 1e-15;

/** The p at which 0 lies on the edge of the range for 1 − p; ranges widen as p falls. */
function edgeOf(rangeAt: (confidence: number) => Interval, change: number): number {
  if (change === 0) return 1;
  const holdsNone = (p: number): boolean => {
    const { low, high } = rangeAt(1 - p);
    return low <= 0 && 0 <= high;
  };
  if (!holdsNone(leastP)) return leastP;
  let [within, outside] = [leastP, 1];
  for (let turn = 0; turn < 200 && outside - within > 1e-12 * within; turn++) {
    // By the mean of the logarithms, until the two are of one size.
    const middle = outside > 2 * within ? Math.sqrt(within * outside) : (within + outside) / 2;
    if (holdsNone(middle)) within = middle;
    else outside = middle;
  }
  return within;
}
