import type { ICellData, Nullable } from "@univerjs/core";
import { type Cell, type ErrorCode, errorCodes } from "../../cells/cell.ts";

const known: ReadonlySet<string> = new Set(errorCodes);

/** An engine's error text as one of the errors a cell can hold. */
export const errorCode = (text: string): ErrorCode => (known.has(text) ? (text as ErrorCode) : "#VALUE!");

// CellValueType.BOOLEAN of the engine; its enum lives in a package that is handed in.
const booleanType = 3;

/** A cell of the engine's sheets as a cell. Errors are kept there as text. */
export function cellFromData(data: Nullable<ICellData>): Cell {
  const value = data?.v;
  if (value === null || value === undefined) return null;
  if (data?.t === booleanType) return Boolean(value);
  return typeof value === "string" && isErrorText(value) ? { error: errorCode(value) } : value;
}

const isErrorText = (text: string): boolean => text.startsWith("#") && known.has(text);
