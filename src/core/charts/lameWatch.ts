import type { Day } from "../../cells/day.ts";
import { Problem } from "../../cells/problem.ts";
import { gatherLimits, type LimitKind } from "./gatherLimits.ts";
import { type Gather, gathersByDay } from "./gathersByDay.ts";
import { limitSignal } from "./limitSignal.ts";
import { runSignals } from "./runSignals.ts";
import { shareOfGathers } from "./shareOfGathers.ts";

export interface WatchChoice {
  /** How many of the first gathers make the centre; left out, all of them. */
  readonly baselineGathers?: number | undefined;
  /** "exact" unless said. */
  readonly limits?: LimitKind | undefined;
}

/** One gather on the chart. */
export interface WatchedGather {
  readonly date: Day;
  readonly share: number;
  readonly centre: number;
  readonly low: number;
  readonly high: number;
  /** In words, "" when there is nothing to say. */
  readonly signal: string;
}

/**
 * A control chart of the share lame: each gather with the limits for its own number of sheep.
 *
 * @param dates day of each row, in any order; rows of one day are one gather
 * @param lame lame sheep a row
 * @param seen sheep seen a row
 * @param choice baseline and kind of limits
 * @returns gathers in order of time
 * @throws Problem as gathersByDay, or when the baseline asks for more gathers than there are
 * @example
 * lameWatch([46000, 46030], [1, 12], [50, 50], { baselineGathers: 1 })[1]?.signal // → "above the high limit"
 */
export function lameWatch(
  dates: readonly Day[],
  lame: readonly number[],
  seen: readonly number[],
  choice: WatchChoice = {},
): readonly WatchedGather[] {
  const gathers = gathersByDay(dates, lame, seen);
  const limitsOf = gatherLimits[choice.limits ?? "exact"];
  const centre = shareOfGathers(baseline(gathers, choice.baselineGathers));
  const shares = gathers.map((gather) => gather.lame / gather.seen);
  const runs = runSignals(shares, centre);
  return gathers.map((gather, place) => {
    const share = gather.lame / gather.seen;
    const limits = limitsOf(gather.seen, centre);
    const signals = [limitSignal(share, limits), runs[place]].filter((signal) => signal !== undefined);
    return { date: gather.date, share, centre, ...limits, signal: signals.join("; ") };
  });
}

function baseline(gathers: readonly Gather[], wanted = gathers.length): readonly Gather[] {
  if (wanted < 1 || wanted > gathers.length) {
    throw new Problem(`${wanted} cannot be the baseline of ${gathers.length} gathers; enter 1 to ${gathers.length}`, {
      argument: "baseline_gathers",
    });
  }
  return gathers.slice(0, wanted);
}
