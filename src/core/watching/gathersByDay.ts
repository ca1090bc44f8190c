import type { Day } from "../../cells/day.ts";
import { nothingToReport, Problem } from "../../cells/problem.ts";
import { checkCounts, countFault } from "../counting/checkCounts.ts";

/** All the sheep looked at on one day. */
export interface Gather {
  readonly date: Day;
  readonly lame: number;
  readonly seen: number;
}

/**
 * The gathers in order of time; rows of one day (its groups, say) are one gather.
 *
 * @param dates day of each row, in any order
 * @param lame lame sheep a row
 * @param seen sheep seen a row
 * @throws Problem when a row has more lame than seen, or no sheep were seen on a day; #N/A without any row
 * @example
 * gathersByDay([46010, 46000, 46000], [1, 2, 0], [9, 20, 10])
 * // → [{ date: 46000, lame: 2, seen: 30 }, { date: 46010, lame: 1, seen: 9 }]
 */
export function gathersByDay(
  dates: readonly Day[],
  lame: readonly number[],
  seen: readonly number[],
): readonly Gather[] {
  checkCounts(lame, seen);
  if (dates.length !== seen.length) {
    throw new Problem(`dates has ${dates.length} rows and seen has ${seen.length}; give both the same rows`, {
      argument: "dates",
    });
  }
  const byDay = new Map<Day, { date: Day; lame: number; seen: number; row: number }>();
  dates.forEach((date, row) => {
    const gather = byDay.get(date) ?? { date, lame: 0, seen: 0, row };
    gather.lame += lame[row] ?? 0;
    gather.seen += seen[row] ?? 0;
    byDay.set(date, gather);
  });
  if (byDay.size === 0) throw nothingToReport("there is no gather", { argument: "dates" });
  return [...byDay.values()]
    .sort((one, other) => one.date - other.date)
    .map(({ row, ...gather }) => {
      if (gather.seen === 0) throw noneSeen(row);
      return gather;
    });
}

const noneSeen = (index: number): Problem =>
  new Problem("0 sheep seen on this day give no share; enter how many were looked at, or leave the row blank", {
    argument: "seen",
    index,
  });

/** What is wrong with the counts of one row of a dated gather: more lame than seen, or none looked at. */
export const gatherFault = (lame: readonly number[], seen: readonly number[], index: number): Problem | undefined =>
  seen[index] === 0 ? noneSeen(index) : countFault(lame, seen, index);
