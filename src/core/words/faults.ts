import type { Cell } from "../../cells/cell.ts";
import { showCell } from "../../cells/cell.ts";
import { dayOf, firstDay, isoText, lastDay, showDay } from "../../cells/day.ts";
import type { Fault } from "../../cells/fault.ts";

/** What belongs in a cell that holds a day. */
export const wantedDay = "a real date, or text such as 2026-03-14";

/** What belongs in a cell that holds a withdrawal period. */
export const wantedDays = "a whole number of days, 0 or more, without a unit";

/**
 * What is wrong with a cell that is to hold a day. Where the sentence of a function stands there, as in a column of days
 * that was worked out, it says so itself.
 *
 * @example
 * notADate("12/3") // → { what: '"12/3" is not a date', mend: "enter a real date, or text such as 2026-03-14" }
 */
export const notADate = (cell: Cell, wanted = wantedDay): Fault => {
  const mend = `enter ${wanted}`;
  if (typeof cell === "string" && cell.endsWith(`; enter ${wantedDay}`))
    return { what: cell.slice(0, -`; enter ${wantedDay}`.length), mend };
  return { what: `${showCell(cell)} is not a date`, mend };
};

/**
 * A date that no flock record has: a slip of the hand in its year.
 *
 * @param moment - the day that the cell means, which it shows where it holds a number
 * @example
 * outsideDays(111926, 111926).what // → "111926, the day 10 Jun 2206, is not a date from 1990-01-01 to 2100-12-31"
 */
export const outsideDays = (cell: Cell, moment: number, wanted = wantedDay): Fault => {
  const isDay = typeof cell === "number" && moment >= firstShown && moment < lastShown + 1;
  return {
    what: `${showCell(cell)}${isDay ? `, the day ${showDay(moment)},` : ""} is not a date from ${isoText(firstDay)} to ${isoText(lastDay)}`,
    mend: `enter ${wanted}`,
  };
};

// Below, a number is some other number: days, a score, ml. Beyond the year 9999 no spreadsheet has a day.
const firstShown = dayOf("1910-01-01");
const lastShown = dayOf("9999-12-31");

export const notANumber = (cell: Cell, wanted: string): Fault => ({
  what: `${showCell(cell)} is not a number`,
  mend: `enter ${wanted}`,
});

export const noTag: Fault = { what: "no tag in a row that holds a record", mend: "enter the tag of the animal" };

export const noDate: Fault = { what: "no date in a row that holds a record", mend: "enter the date" };

/** A missing period is never 0 days. */
export const noWithdrawalDays: Fault = {
  what: "a treatment without withdrawal days",
  mend: "enter the days from data sheet or vet; 0 only if it says so or no medicine was given",
};

/** The same in a list, where it stands beside its row: short, so that it is not cut off on paper. */
export const noDays: Fault = { what: noWithdrawalDays.what, mend: "" };

export const cellError = (error: string): Fault => ({ what: `the cell holds ${error}`, mend: "mend that cell first" });
