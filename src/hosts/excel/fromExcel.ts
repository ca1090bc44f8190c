import type { Cell, Cells, ErrorCode } from "../../cells/cell.ts";
import { errorCodes } from "../../cells/cell.ts";
import type { Argument } from "../../reading/readArguments.ts";

/** A cell that is more than a number, a text or a yes/no: an error, a formatted number, an entity. */
interface RichValue {
  readonly type?: unknown;
  readonly basicType?: unknown;
  readonly basicValue?: unknown;
  readonly code?: unknown;
  readonly text?: unknown;
}

/**
 * One argument as Excel hands it over, turned into cells. A range without errors and data types is handed on as it is,
 * so that a long column is not copied.
 *
 * @example
 * fromExcel([[4, null, { type: "Error", basicValue: "#DIV/0!" }]]) // → [[4, null, { error: "#DIV/0!" }]]
 */
export function fromExcel(value: unknown): Argument {
  if (!Array.isArray(value)) return value === undefined ? undefined : cellOf(value);
  const range = value as readonly (readonly unknown[])[];
  return holdsRich(range) ? range.map((row) => row.map(cellOf)) : (range as Cells);
}

// Cell by cell without a function for each: a column of 100,000 rows is an ordinary argument.
function holdsRich(range: readonly (readonly unknown[])[]): boolean {
  for (const row of range) for (let at = 0; at < row.length; at++) if (isRich(row[at])) return true;
  return false;
}

const isRich = (value: unknown): boolean => typeof value === "object" && value !== null;

const isPlain = (value: unknown): value is Cell =>
  value === null || typeof value === "number" || typeof value === "string" || typeof value === "boolean";

function cellOf(value: unknown): Cell {
  if (isPlain(value)) return value;
  if (value === undefined) return null;
  const rich = value as RichValue;
  // An entity or a picture is an error underneath, but what its cell shows is its text.
  if (typeof rich.text === "string") return rich.text;
  if (rich.type === "Empty") return null;
  const isError = rich.type === "Error" || rich.basicType === "Error" || rich.code !== undefined;
  if (isError) return { error: errorCode(rich.code ?? rich.basicValue) };
  return isPlain(rich.basicValue) ? rich.basicValue : { error: "#VALUE!" };
}

// Excel has errors of its own for entities that cannot be fetched; to a computation they are a value that is wrong.
const errorCode = (code: unknown): ErrorCode => errorCodes.find((known) => known === code) ?? "#VALUE!";
