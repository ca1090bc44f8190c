import { createContext, runInContext } from "node:vm";
import type { Cell } from "../../../src/cells/cell.ts";

/** A cell of the sheet: a date is a serial that the sheet knows to be a date. */
export type SheetCell = Cell | { readonly date: number };

export type Given = SheetCell | readonly (readonly SheetCell[])[] | undefined;

/** What is in the cells after the call: Sheets turns a Date into a serial with a date format. */
export type Shown = { readonly cells: readonly (readonly SheetCell[])[] } | { readonly message: string };

/**
 * A stand-in for Google Sheets calling a custom function, as its guide to custom functions describes it: a single cell
 * arrives as a value, a larger range as rows of values, a blank cell as "", a date as a Date by the clock of the
 * spreadsheet's time zone, an error in a range as its text; a thrown error's message is shown beside the cell.
 */
export function sheetsStandIn(script: string, zone: string): (name: string, given: readonly Given[]) => Shown {
  const context = createContext({
    SpreadsheetApp: { getActiveSpreadsheet: () => ({ getSpreadsheetTimeZone: () => zone }) },
  });
  runInContext(script, context);
  // Dates and arrays must come from the script's own world, as they do in Sheets.
  const makeDate = runInContext("(ms) => new Date(ms)", context) as (ms: number) => Date;
  const makeRows = runInContext("(rows) => rows.map((row) => Array.from(row))", context) as <T>(rows: T) => T;

  const handOver = (cell: SheetCell): unknown => {
    if (cell === null) return "";
    if (typeof cell !== "object") return cell;
    return "date" in cell ? makeDate(instantOf(cell.date, zone)) : cell.error;
  };
  const keep = (value: unknown): SheetCell => {
    if (Object.prototype.toString.call(value) === "[object Date]") return { date: serialOf(value as Date, zone) };
    if (typeof value === "number" || typeof value === "string" || typeof value === "boolean") return value;
    throw new Error(`Sheets cannot show ${String(value)}`);
  };

  return (name, given) => {
    const handed = given.map((argument) => {
      if (!Array.isArray(argument)) return argument === undefined ? undefined : handOver(argument as SheetCell);
      const rows = (argument as readonly (readonly SheetCell[])[]).map((row) => row.map(handOver));
      return rows.length === 1 && rows[0]?.length === 1 ? rows[0][0] : makeRows(rows);
    });
    try {
      const answer = (context[`FOOT_${name}`] as (...given: unknown[]) => unknown)(...handed);
      const rows = Array.isArray(answer) ? (answer as unknown[][]) : [[answer]];
      return { cells: rows.map((row) => row.map(keep)) };
    } catch (error) {
      return { message: (error as Error).message };
    }
  };
}

const clocks = new Map<string, Intl.DateTimeFormat>();

function written(instant: number, zone: string): string {
  let clock = clocks.get(zone);
  if (clock === undefined) {
    clock = new Intl.DateTimeFormat("sv-SE", { timeZone: zone, dateStyle: "short", timeStyle: "medium" });
    clocks.set(zone, clock);
  }
  return clock.format(instant);
}

const quarter = 15 * 60_000;

/** The instant at which the wall shows this serial, found by trying every offset there is. */
export function instantOf(serial: number, zone: string): number {
  const wall = Math.round((serial - 25_569) * 86_400) * 1000;
  const wanted = new Date(wall).toISOString().slice(0, 19).replace("T", " ");
  for (let offset = 15 * 4; offset >= -15 * 4; offset--) {
    if (written(wall - offset * quarter, zone) === wanted) return wall - offset * quarter;
  }
  // The clock skips this hour; the hour after it is what calendars show instead.
  return instantOf(serial + 1 / 24, zone);
}

const serialOf = (date: Date, zone: string): number =>
  Date.parse(`${written(date.getTime(), zone).replace(" ", "T")}Z`) / 86_400_000 + 25_569;
