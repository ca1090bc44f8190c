import type { Moment } from "../../cells/day.ts";
import { Doubt } from "../../cells/doubt.ts";
import { faultInWords } from "../../cells/fault.ts";
import { Problem } from "../../cells/problem.ts";
import { noDate } from "../words/faults.ts";
import { type Counting, clearDate } from "./clearDate.ts";

/** Written where a treatment has no withdrawal days: a missing period is never 0 days. */
const noWithdrawalDays = "no withdrawal days";

/**
 * The clear date of each treatment of a column.
 *
 * @param treated - a day for each row, undefined where the row has no treatment
 * @param withdrawalDays - days for each row, undefined where they are missing
 * @returns for each row a serial, or what is wrong with the row in words, or undefined where there is no treatment
 * @example
 * clearDates([46063, 46063], [28, undefined], "whole days") // → [46092, "no withdrawal days"]
 */
export const clearDates = (
  treated: readonly (Moment | undefined | Doubt)[],
  withdrawalDays: readonly (number | undefined | Doubt)[],
  counting: Counting,
): readonly (Moment | string | undefined)[] =>
  treated.map((moment, index) => {
    const days = withdrawalDays[index];
    if (moment instanceof Doubt) return moment.sentence;
    if (days instanceof Doubt) return days.sentence;
    if (moment !== undefined && days === undefined) return noWithdrawalDays;
    if (moment === undefined && days !== undefined && days !== 0) return faultInWords(noDate);
    try {
      return loneClearDate(moment, days, counting);
    } catch (error) {
      if (error instanceof Problem) return error.sentence;
      throw error;
    }
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
