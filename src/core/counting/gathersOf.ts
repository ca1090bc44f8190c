import type { Day } from "../../cells/day.ts";
import { Problem } from "../../cells/problem.ts";

/** The sheep of one gather. */
export interface GatherCount {
  readonly lame: number;
  readonly seen: number;
}

/**
 * The gathers that rows of counts stand for: each row one, or where days are given all rows of a day one. Rows in which no
 * sheep was seen say nothing and are left out.
 *
 * @param lame lame sheep a row
 * @param seen sheep seen a row
 * @param dates the day of each row
 * @throws Problem when the days are fewer than the rows, or one is missing
 * @example
 * gathersOf([1, 2, 0], [10, 20, 30], [46000, 46000, 46030]) // → [{ lame: 3, seen: 30 }, { lame: 0, seen: 30 }]
 */
export function gathersOf(
  lame: readonly number[],
  seen: readonly number[],
  dates?: readonly (Day | undefined)[],
): readonly GatherCount[] {
  if (dates === undefined) {
    return lame.map((count, row) => ({ lame: count, seen: seen[row] ?? 0 })).filter((gather) => gather.seen > 0);
  }
  if (dates.length !== seen.length) {
    throw new Problem(`dates has ${dates.length} rows and seen has ${seen.length}; give both the same rows`, {
      argument: "dates",
    });
  }
  const byDay = new Map<Day, { lame: number; seen: number }>();
  dates.forEach((day, index) => {
    const fault = dateFault(dates, index);
    if (day === undefined || fault !== undefined) throw fault;
    const gather = byDay.get(day) ?? { lame: 0, seen: 0 };
    gather.lame += lame[index] ?? 0;
    gather.seen += seen[index] ?? 0;
    byDay.set(day, gather);
  });
  return [...byDay.values()].filter((gather) => gather.seen > 0);
}

/** What is wrong with the day of one row, where days are given: it is missing. */
export const dateFault = (dates: readonly (Day | undefined)[] | undefined, index: number): Problem | undefined =>
  dates === undefined || dates[index] !== undefined
    ? undefined
    : new Problem(
        "it is blank, but the row holds a record; enter the day of the gather, or leave dates out altogether",
        {
          argument: "dates",
          index,
        },
      );
