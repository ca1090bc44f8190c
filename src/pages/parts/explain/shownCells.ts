import { type Cell, type Cells, isBlankCell, isCellError } from "../../../cells/cell.ts";
import { showMoment } from "../../../cells/day.ts";
import type { CellKind } from "../../../reading/kind.ts";
import type { Format } from "../../../writing/format.ts";
import { words } from "../../words.ts";

const mostShown = 5;

/**
 * The first cells of a range in words.
 *
 * @param holds - what the argument is to hold, which tells whether a number is a day
 * @param dayOffset - added to a cell's number to get its day: 1462 in a workbook that counts from 1904
 * @example
 * shownCells([[3], [null], [2]], "number") // → "3 cells: 3, blank, 2"
 */
export function shownCells(cells: Cells, holds: CellKind<unknown>["holds"], dayOffset = 0): string {
  const all = cells.flat();
  const first = all.slice(0, mostShown).map((cell) => shownCell(cell, holds === "date" ? "date" : "text", dayOffset));
  return words.explain.holds(all.length, [...first, ...(all.length > mostShown ? ["…"] : [])].join(", "));
}

/**
 * One cell as a person reads it.
 *
 * @example
 * shownCell(0.1, "share") // → "10.0%"
 */
export function shownCell(cell: Cell | undefined, format: Format, dayOffset = 0): string {
  if (cell === undefined || cell === null || isBlankCell(cell)) return words.explain.blank;
  if (isCellError(cell)) return cell.error;
  if (typeof cell === "boolean") return cell ? "TRUE" : "FALSE";
  if (typeof cell === "string") return cell;
  if ((format === "date" || format === "date and time") && cell + dayOffset >= 1) return showMoment(cell + dayOffset);
  if (format === "share") return `${(cell * 100).toFixed(1)}%`;
  return String(Number.isInteger(cell) ? cell : Number(cell.toPrecision(6)));
}
