import type { Cell } from "../cells/cell.ts";
import { isBlankCell } from "../cells/cell.ts";
import { type Day, firstDay, lastDay, type Moment, momentFromText } from "../cells/day.ts";
import type { Done } from "../core/dates/recheckState.ts";
import { notADate, outsideDays, wantedDay } from "../core/words/faults.ts";
import { type CellKind, defineKind, type ReadOptions, Refusal } from "./kind.ts";

/** Every day that is accepted, which a cell mostly holds as its number. */
const anyDay = { least: firstDay, most: lastDay };

// Some spreadsheets hand over a blank cell as 0, and 0 is never the date of a record.
const isBlankDay = (cell: Cell): boolean => cell === 0 || isBlankCell(cell);

function momentIn(cell: Cell, { dayOffset }: ReadOptions, expected = wantedDay): Moment {
  const moment =
    typeof cell === "number" ? cell + dayOffset : typeof cell === "string" ? momentFromText(cell) : undefined;
  if (moment === undefined || Number.isNaN(moment)) throw new Refusal(notADate(cell, expected));
  // Half-open at the end so that a time on the last day still counts.
  if (moment < firstDay || moment >= lastDay + 1) throw new Refusal(outsideDays(cell, moment, expected));
  return moment;
}

/** A calendar day; a time in the same cell is left out. */
export const day: CellKind<Day> = defineKind({
  wanted: wantedDay,
  holds: "date",
  isBlank: isBlankDay,
  remember: "texts",
  plain: anyDay,
  read: (cell, options) => Math.floor(momentIn(cell, options)),
});

/** A calendar day with its time, if the cell has one. */
export const moment: CellKind<Moment> = defineKind({
  wanted: "a real date, with its time if known, or text such as 2026-03-14 10:30",
  holds: "date",
  isBlank: isBlankDay,
  remember: "texts",
  plain: anyDay,
  read: (cell, options) => momentIn(cell, options),
});

const wantedDone = "the date it was done, or yes or no";

/** That something was done: its date, or yes or no. */
export const done: CellKind<Done> = defineKind<Done>({
  wanted: wantedDone,
  holds: "date",
  isBlank: isBlankDay,
  remember: "texts",
  plain: anyDay,
  read(cell, options) {
    if (typeof cell === "boolean") return cell;
    const word = typeof cell === "string" ? cell.trim().toLowerCase() : "";
    if (["yes", "y", "done", "true"].includes(word)) return true;
    if (["no", "n", "false"].includes(word)) return false;
    if (cell === 1) return true;
    return Math.floor(momentIn(cell, options, wantedDone));
  },
});
