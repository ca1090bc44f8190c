import type { Cell } from "../../cells/cell.ts";
import { showCell } from "../../cells/cell.ts";
import { firstDay, isoText, lastDay } from "../../cells/day.ts";
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

/** A date that no flock record has: a slip of the hand in its year. */
export const outsideDays = (cell: Cell, wanted = wantedDay): Fault => ({
  what: `${showCell(cell)} is not a date from ${isoText(firstDay)} to ${isoText(lastDay)}`,
  mend: `enter ${wanted}`,
});

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
