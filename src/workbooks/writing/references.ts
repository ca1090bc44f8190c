import { type Area, columnLetters, type Place } from "../../workbook/address.ts";
import { fixedArea, quoteSheet } from "../../workbook/formula/structured.ts";

export { fixedArea };

/** A cell as a formula of its sheet names it. @example fixedCell({ row: 3, column: 1 }) // → "$B$4" */
export const fixedCell = (place: Place): string => fixedArea(oneCell(place));

/**
 * A cell whose row moves along with the row it is asked for, as in what makes rows stand out.
 *
 * @example
 * rowCell({ row: 3, column: 1 }) // → "$B4"
 */
export const rowCell = ({ row, column }: Place): string => `$${columnLetters(column)}${row + 1}`;

/** Cells of a sheet as formulas of every sheet name them. */
export const cellsOn = (sheet: string, area: Area): string => `${quoteSheet(sheet)}${fixedArea(area)}`;

export const cellOn = (sheet: string, place: Place): string => cellsOn(sheet, oneCell(place));

export const oneCell = ({ row, column }: Place): Area => ({ top: row, left: column, bottom: row, right: column });

/** Whole rows of a sheet. */
export const rowsOn = (sheet: string, [first, last]: readonly [number, number]): string =>
  `${quoteSheet(sheet)}$${first + 1}:$${last + 1}`;

/**
 * The cells of a column that are filled, from its first on. A list to choose from that ended in blank cells would let
 * anything through.
 */
export function filledCells(sheet: string, column: Area): string {
  const all = cellsOn(sheet, column);
  return `${cellOn(sheet, { row: column.top, column: column.left })}:INDEX(${all},MAX(1,COUNTA(${all})))`;
}

/** The letters over a column, for a reader who looks for it. */
export const columnOfCells = ({ left }: Area): string => columnLetters(left);

/** Whole columns of a sheet. */
export const columnsOn = (sheet: string, [first, last]: readonly [number, number]): string =>
  `${quoteSheet(sheet)}$${columnLetters(first)}:$${columnLetters(last)}`;
