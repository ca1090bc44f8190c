import { type Day, showDay } from "../../cells/day.ts";
import { nothingToReport, Problem } from "../../cells/problem.ts";

/**
 * Sheep-days from head counts: each count holds until the next one, the last until the day `until`.
 *
 * The day `until` itself is not counted, nor are counts after it. Rows may be in any order.
 *
 * @param dates day of each count, no day twice
 * @param heads sheep counted
 * @param until the day on which the period ends
 * @returns sheep × days
 * @throws Problem when a day has two counts, or `until` is before the first one
 * @example
 * sheepDays([46000, 46010], [100, 90], 46020) // → 1900
 */
export function sheepDays(dates: readonly Day[], heads: readonly number[], until: Day): number {
  if (dates.length !== heads.length) {
    throw new Problem(`dates has ${dates.length} rows and heads has ${heads.length}; give both the same rows`, {
      argument: "dates",
    });
  }
  const counts = dates
    .map((day, index) => ({ day, heads: heads[index] ?? 0, index }))
    .sort((one, other) => one.day - other.day || one.index - other.index);
  const [first] = counts;
  if (!first) throw nothingToReport("there is no head count", { argument: "dates" });
  if (until < first.day) {
    throw new Problem(`${showDay(until)} is before the first head count on ${showDay(first.day)}; enter a later day`, {
      argument: "until",
    });
  }
  return counts.reduce((sum, count, index) => {
    const next = counts[index + 1];
    if (next?.day === count.day) throw twoCounts(next);
    const end = Math.min(next?.day ?? until, until);
    return sum + count.heads * Math.max(end - count.day, 0);
  }, 0);
}

const twoCounts = ({ day, index }: { readonly day: Day; readonly index: number }): Problem =>
  new Problem(`${showDay(day)} has two head counts; keep one of them, or add the groups together first`, {
    argument: "dates",
    index,
  });
