import type { Cell, ErrorCode } from "../../cells/cell.ts";
import { errorCodes } from "../../cells/cell.ts";

/** A cell that is more than a number, a text or a yes/no: an error, a formatted number, an entity. */
interface RichValue {
  readonly type?: unknown;
  readonly basicType?: unknown;
  readonly basicValue?: unknown;
  readonly code?: unknown;
  readonly text?: unknown;
}

const isPlain = (value: unknown): value is Cell =>
  value === null || typeof value === "number" || typeof value === "string" || typeof value === "boolean";

/**
 * One cell as Excel hands it over, turned into a cell.
 *
 * @example
 * fromExcel({ type: "Error", basicValue: "#DIV/0!" }) // → { error: "#DIV/0!" }
 */
export function fromExcel(value: unknown): Cell {
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
