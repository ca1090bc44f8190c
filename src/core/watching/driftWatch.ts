import type { Day } from "../../cells/day.ts";
import { Problem } from "../../cells/problem.ts";
import type { Spread } from "../counting/countedLooks.ts";
import type { Interval } from "../statistics/interval.ts";
import { type Gather, gathersByDay } from "./gathersByDay.ts";
import { limitSignal } from "./limitSignal.ts";
import { movingInflation } from "./movingInflation.ts";
import { shareOfGathers } from "./shareOfGathers.ts";
import type { UsualLevel } from "./usualLevels.ts";
import { weightedAverages } from "./weightedAverages.ts";

export interface DriftChoice {
  /** Weight of the newest gather, above 0, at most 1. */
  readonly weight: number;
  /** Limits so many standard deviations from the centre, above 0. */
  readonly width: number;
  /** The share expected; left out, that of all gathers together. */
  readonly target?: number | undefined;
  /** Whether the limits allow for the spread between gathers, as they do unless said, or for chance alone. */
  readonly spread?: Spread | undefined;
}

/** One gather on the chart. */
export interface DriftedGather extends Interval {
  readonly date: Day;
  readonly share: number;
  readonly centre: number;
  /** In words, "" when there is nothing to say. */
  readonly signal: string;
  /** The weighted average up to this gather. */
  readonly drift: number;
}

/**
 * A chart for slow changes: the exponentially weighted moving average (EWMA) of the shares, with the exact limits at
 * each gather, which widen from the first on and follow the number of sheep seen. They allow for the spread between
 * gathers that the steps from one to the next show (movingInflation).
 *
 * @param dates day of each row, in any order; rows of one day are one gather
 * @param lame lame sheep a row
 * @param seen sheep seen a row
 * @param choice weight, width, target, spread
 * @returns gathers in order of time
 * @throws Problem as gathersByDay, or for a weight or width out of range
 * @source Roberts 1959, Technometrics 1:239; NIST/SEMATECH e-Handbook of Statistical Methods 6.3.2.4
 * @example
 * driftWatch([46000, 46030], [5, 10], [50, 50], { weight: 0.2, width: 3, target: 0.1 }).map(({ drift }) => drift)
 * // → [0.1, 0.12]
 */
export function driftWatch(
  dates: readonly Day[],
  lame: readonly number[],
  seen: readonly number[],
  { weight, width, target, spread }: DriftChoice,
): readonly DriftedGather[] {
  if (!(weight > 0 && weight <= 1)) throw outOfRange(weight, "weight", "above 0 and at most 1, such as 0.2");
  if (!(width > 0)) throw outOfRange(width, "width", "above 0, such as 3");
  const gathers = gathersByDay(dates, lame, seen);
  const centre = target ?? shareOfGathers(gathers);
  const shares = gathers.map((gather) => gather.lame / gather.seen);
  const level = { share: centre, ...seenOf(gathers) };
  const wider =
    spread === "chance"
      ? 1
      : movingInflation(
          gathers,
          gathers.map(() => level),
          true,
        );
  const variances = gathers.map((gather) => (wider * centre * (1 - centre)) / gather.seen);
  const averages = weightedAverages(shares, variances, { weight, start: centre });
  return gathers.map(({ date, lame: x, seen: n }, index) => {
    const { average = centre, variance = 0 } = averages[index] ?? {};
    const reach = width * Math.sqrt(variance);
    const limits = { low: Math.max(centre - reach, 0), high: Math.min(centre + reach, 1) };
    return { date, share: x / n, drift: average, centre, ...limits, signal: limitSignal(average, limits) ?? "" };
  });
}

const seenOf = (gathers: readonly Gather[]): Omit<UsualLevel, "share"> =>
  gathers.reduce((sum, { seen }) => ({ seen: sum.seen + seen, squares: sum.squares + seen * seen }), {
    seen: 0,
    squares: 0,
  });

const outOfRange = (found: number, argument: string, wanted: string): Problem =>
  new Problem(`${found} is out of range; enter a number ${wanted}`, { argument });
