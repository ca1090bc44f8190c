import type { Moment } from "../../cells/day.ts";
import { Problem } from "../../cells/problem.ts";
import { type Counting, clearDate } from "./clearDate.ts";

/** Written where a treatment has no withdrawal days: a missing period is never 0 days. */
const noWithdrawalDays = "no withdrawal days";

/**
 * The clear date of each treatment of a column.
 *
 * @param treated - a day for each row, undefined where the row has no treatment
 * @param withdrawalDays - days for each row, undefined where they are missing
 * @returns for each row a serial, `"no withdrawal days"`, or undefined where there is no treatment
 * @throws Problem with the row when days are given without a treatment
 * @example
 * clearDates([46063, 46063], [28, undefined], "whole days") // → [46092, "no withdrawal days"]
 */
export const clearDates = (
  treated: readonly (Moment | undefined)[],
  withdrawalDays: readonly (number | undefined)[],
  counting: Counting,
): readonly (Moment | string | undefined)[] =>
  treated.map((moment, index) => {
    const days = withdrawalDays[index];
    if (moment !== undefined && days === undefined) return noWithdrawalDays;
    return atRow(index, () => loneClearDate(moment, days, counting));
  });

/**
 * The clear date of one treatment; undefined when there is none.
 *
 * @throws Problem when only one of the two is there: a missing period is never 0 days
 */
export function loneClearDate(
  treated: Moment | undefined,
  withdrawalDays: number | undefined,
  counting: Counting,
): Moment | undefined {
  if (treated !== undefined && withdrawalDays !== undefined) return clearDate(treated, withdrawalDays, counting);
  if (treated !== undefined)
    throw new Problem("it is blank, and a missing period is not 0 days; enter the days from the data sheet", {
      argument: "withdrawal_days",
    });
  // 0 days without a date is how some spreadsheets hand over a row that is blank.
  if (withdrawalDays === undefined || withdrawalDays === 0) return undefined;
  throw new Problem("it is blank, but withdrawal days are given; enter the date of the treatment", {
    argument: "treated",
  });
}

/** Adds the row to a problem that a single treatment was refused with. */
export function atRow<T>(index: number, work: () => T): T {
  try {
    return work();
  } catch (error) {
    throw error instanceof Problem ? error.at({ ...error.place, index }) : error;
  }
}
