import { catalogue } from "../../../functions/catalogue.ts";
import { type Cell, type CellError, type ErrorCode, errorCodes } from "../../cells/cell.ts";
import type { AnyFunction } from "../../definition/defineFunction.ts";
import { evaluate } from "../../definition/evaluate.ts";
import type { Parameter } from "../../reading/parameter.ts";
import type { Argument } from "../../reading/readArguments.ts";
import type { Format } from "../../writing/format.ts";
import { type WallClock, wallClock } from "./wallClock.ts";

/** What Google Sheets hands over for a cell, or takes from a function. */
export type SheetsValue = number | string | boolean | Date;

type SheetsArgument = SheetsValue | null | undefined | readonly (readonly (SheetsValue | null)[])[];

const byName: ReadonlyMap<string, AnyFunction> = new Map(
  catalogue.map((definition) => [definition.name, definition] as const),
);

/**
 * Answers one call from a cell of Google Sheets.
 *
 * @param zone - gives the spreadsheet's time zone; asked for only when there is a date to read or to give
 * @returns a value, or a rectangle of values; dates as Date objects, which Sheets shows as dates
 * @throws Error with the message that Sheets shows beside the cell
 */
export function answer(
  name: string,
  given: readonly SheetsArgument[],
  zone: () => string,
): SheetsValue | readonly (readonly SheetsValue[])[] {
  const definition = byName.get(name);
  if (definition === undefined) throw new Error(`there is no function ${name}`);
  let known: WallClock | undefined;
  const clock = (): WallClock => {
    known ??= wallClock(zone());
    return known;
  };

  const parameters = Object.values(definition.parameters) as Parameter<unknown>[];
  const outcome = evaluate(
    definition,
    given.map((argument, index) => received(argument, parameters[index], clock)),
  );
  if (!outcome.ok) throw new Error(outcome.message);

  const cells = outcome.cells.map((row) => row.map((cell, column) => sent(cell, outcome.formats[column], clock)));
  const [[only] = []] = cells;
  return cells.length === 1 && cells[0]?.length === 1 && only !== undefined ? only : cells;
}

function received(
  argument: SheetsArgument,
  parameter: Parameter<unknown> | undefined,
  clock: () => WallClock,
): Argument {
  if (Array.isArray(argument))
    return argument.map((row: readonly SheetsValue[]) => row.map((value) => cell(value, clock)));
  // An argument skipped between two commas arrives like a blank cell.
  if (argument === undefined || ((argument === null || argument === "") && parameter?.optional)) return undefined;
  // For a cell that must be filled: blank, and not left out.
  return argument === "" ? "" : cell(argument as SheetsValue | null, clock);
}

function cell(value: SheetsValue | null, clock: () => WallClock): Cell {
  if (value === null || value === "") return null;
  if (typeof value === "string") return errors.get(value) ?? value;
  if (typeof value === "object") return clock().serialOf(value);
  return value;
}

// An error in a range arrives as its text; #ERROR! is Sheets' own, for a formula it cannot read.
const errors: ReadonlyMap<string, CellError> = new Map<string, CellError>([
  ...errorCodes.map((error: ErrorCode) => [error, { error }] as const),
  ["#ERROR!", { error: "#VALUE!" }],
]);

function sent(cell: Cell, format: Format | undefined, clock: () => WallClock): SheetsValue {
  if (typeof cell === "number") return format === "date" || format === "date and time" ? clock().dateOf(cell) : cell;
  if (cell === null) return "";
  return typeof cell === "object" ? cell.error : cell;
}
