import type { Day } from "../../cells/day.ts";
import { Problem } from "../../cells/problem.ts";
import type { Spread } from "../counting/countedLooks.ts";
import type { Interval } from "../statistics/interval.ts";
import { sumOf } from "../statistics/sumOf.ts";
import { gatherLimits, type LimitKind } from "./gatherLimits.ts";
import { type Gather, gathersByDay } from "./gathersByDay.ts";
import { limitSignal } from "./limitSignal.ts";
import { movingInflation } from "./movingInflation.ts";
import { runSignals } from "./runSignals.ts";
import { type LevelWord, type UsualLevel, usualLevels } from "./usualLevels.ts";

export interface WatchChoice {
  /** How many of the first gathers make the centre; left out, all of them. */
  readonly baselineGathers?: number | undefined;
  /** "exact" unless said. */
  readonly limits?: LimitKind | undefined;
  /** Whether the limits allow for the spread between gathers, as they do unless said, or for chance alone. */
  readonly spread?: Spread | undefined;
  /** Whether the centre is that of all baseline gathers, as it is unless said, or of the same month in other years. */
  readonly usualLevel?: LevelWord | undefined;
}

/** One gather on the chart. */
export interface WatchedGather {
  readonly date: Day;
  readonly share: number;
  /** Centre and limits are undefined where nothing is known of what is usual. */
  readonly centre: number | undefined;
  readonly low: number | undefined;
  readonly high: number | undefined;
  /** In words, "" when there is nothing to say. */
  readonly signal: string;
}

/** Said of a gather that has no centre. */
const noOtherYear = "no gather in this month of another year";

/**
 * A control chart of the share lame: each gather with the limits for its own number of sheep.
 *
 * The limits allow for the spread between gathers that the baseline shows (a p′ chart; movingInflation). The level of a month
 * rests on few sheep, so that limits about it allow for its own chance as well.
 *
 * @param dates day of each row, in any order; rows of one day are one gather
 * @param lame lame sheep a row
 * @param seen sheep seen a row
 * @param choice baseline, kind of limits, spread, usual level
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
  const base = baseline(gathers, choice.baselineGathers);
  const levels = usualLevels(gathers, base, choice.usualLevel ?? "all");
  const limitsOf = limitsFor(base, levels, choice);
  const shares = gathers.map((gather) => gather.lame / gather.seen);
  const runs = runSignals(
    shares,
    levels.map((level) => level?.share),
  );
  return gathers.map((gather, index) => {
    const share = gather.lame / gather.seen;
    const level = levels[index];
    if (level === undefined) {
      return { date: gather.date, share, centre: undefined, low: undefined, high: undefined, signal: noOtherYear };
    }
    const limits = limitsOf(gather, level);
    const signals = [limitSignal(share, limits), runs[index]].filter((signal) => signal !== undefined);
    return { date: gather.date, share, centre: level.share, ...limits, signal: signals.join("; ") };
  });
}

function limitsFor(base: readonly Gather[], levels: readonly (UsualLevel | undefined)[], choice: WatchChoice) {
  const kind = choice.limits ?? "exact";
  const known = (choice.usualLevel ?? "all") === "all";
  const wider = choice.spread === "chance" ? 1 : movingInflation(base, levels, known);
  const [seen, squares] = [
    sumOf(base.map((gather) => gather.seen)),
    sumOf(base.map((gather) => gather.seen * gather.seen)),
  ];
  const size = squares / seen;
  const correlation = size > 1 ? (wider - 1) / (size - 1) : 0;
  return ({ seen: n }: Gather, level: UsualLevel): Interval => {
    // A p′ chart widens every gather alike; the beta-binomial widens large gathers more than small ones.
    const own = kind === "3sigma" ? wider : 1 + (n - 1) * correlation;
    if (known) return gatherLimits[kind](n, level.share, own);
    const ofLevel = kind === "3sigma" ? wider : 1 + (level.squares / level.seen - 1) * correlation;
    // No lame sheep in a few gathers of that month is not proof that none is usual.
    const centre = (level.share * level.seen + 0.5) / (level.seen + 1);
    return gatherLimits[kind](n, centre, own + (n / level.seen) * ofLevel);
  };
}

function baseline(gathers: readonly Gather[], wanted = gathers.length): readonly Gather[] {
  if (wanted < 1 || wanted > gathers.length) {
    throw new Problem(`${wanted} cannot be the baseline of ${gathers.length} gathers; enter 1 to ${gathers.length}`, {
      argument: "baseline_gathers",
    });
  }
  return gathers.slice(0, wanted);
}
