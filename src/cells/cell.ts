/** The error values a cell can hold in the spreadsheets we serve. */
export const errorCodes = [
  "#VALUE!",
  "#N/A",
  "#REF!",
  "#NAME?",
  "#DIV/0!",
  "#NUM!",
  "#NULL!",
  "#SPILL!",
  "#CALC!",
  "#BUSY!",
] as const;

export type ErrorCode = (typeof errorCodes)[number];

/** A cell that holds an error. */
export interface CellError {
  readonly error: ErrorCode;
}

/** What one cell can hold. A blank cell is `null` on the way in; on the way out it is written as `""`. */
export type Cell = number | string | boolean | null | CellError;

/** A rectangle of cells, row by row. */
export type Cells = readonly (readonly Cell[])[];

export const isCellError = (cell: unknown): cell is CellError =>
  typeof cell === "object" && cell !== null && "error" in cell;

/** Nothing in it, or only white space: a space typed into a cell is not a record. */
export const isBlankCell = (cell: Cell | undefined): boolean =>
  cell === null || cell === undefined || (typeof cell === "string" && isBlankText(cell));

// Nearly every text begins with a letter or a digit, and only another is looked through.
const isBlankText = (text: string): boolean => {
  const first = text.charCodeAt(0);
  return !(first > space && first < endOfAscii) && text.trim() === "";
};

const space = " ".charCodeAt(0);
const endOfAscii = 0x7f;

/** How a cell's content is quoted in a message, e.g. `"12/3"`, `-2`, `TRUE`, `#DIV/0!`. */
export function showCell(cell: Cell | undefined): string {
  if (cell === null || cell === undefined) return "a blank cell";
  if (typeof cell === "string") return cell.trim() === "" ? "a blank cell" : `"${shorten(cell.trim())}"`;
  if (typeof cell === "boolean") return cell ? "TRUE" : "FALSE";
  if (typeof cell === "number") return String(cell);
  return cell.error;
}

// A pasted paragraph must not push the advice out of a cell's message.
const shorten = (text: string): string => (text.length > 40 ? `${text.slice(0, 39)}…` : text);
