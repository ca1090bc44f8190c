import type { IRange } from "@univerjs/core";
import type { Cells } from "../../../cells/cell.ts";
import { isInArea } from "../../../hosts/headless/filledAreas.ts";
import { type Area, areaText, columnNumber, readArea, readPlace } from "../../../workbook/address.ts";
import { lastRow } from "../../../workbook/limits.ts";
import { partsOfReference } from "./cellNamed.ts";
import { cellsIn } from "./cellsIn.ts";
import type { CellAt, GridBook } from "./gridBook.ts";

/** Cells as they are now. */
export interface CellsNamed {
  /** As the reference has it, with the cells that it comes to. */
  readonly address: string;
  readonly cells: Cells;
  /** As they are shown. */
  readonly texts: () => readonly string[];
}

/** The cells that a reference names as it stands in the formula of a cell of this sheet. */
export function cellsNamed(book: GridBook, reference: string, own: string): CellsNamed | undefined {
  const { sheet: name, cells } = partsOfReference(reference);
  const sheet = name === undefined ? own : book.sheetNamed(name);
  const area = sheet === undefined ? undefined : areaNamed(cells, arraysOf(book, sheet));
  if (sheet === undefined || !area) return undefined;
  const before = reference.slice(0, reference.length - cells.length);
  return {
    address: before + areaText(area),
    cells: cellsAt(book, sheet, area),
    texts() {
      const found = book.api.getActiveWorkbook()?.getSheetBySheetId(sheet);
      const { top, left, bottom, right } = area;
      return (
        found
          ?.getRange(top, left, bottom - top + 1, right - left + 1)
          .getDisplayValues()
          .flat() ?? []
      );
    },
  };
}

/** The cells that the formula of a cell fills, or the cell alone. */
export function cellsFilled(book: GridBook, sheet: string, row: number, column: number): Cells {
  const filled = arraysOf(book, sheet)?.[row]?.[column];
  return cellsAt(book, sheet, filled ? areaOf(filled) : { top: row, left: column, bottom: row, right: column });
}

/** The cell whose formula fills a cell; the cell itself where no other's does. */
export function filledBy(book: GridBook, { sheet, row, column }: CellAt): CellAt {
  for (const [anchorRow, line] of Object.entries(arraysOf(book, sheet) ?? {}))
    for (const [anchorColumn, area] of Object.entries(line ?? {}))
      if (area && isInArea(area, row, column)) return { sheet, row: Number(anchorRow), column: Number(anchorColumn) };
  return { sheet, row, column };
}

function cellsAt({ api, formulas, unit }: GridBook, sheet: string, area: Area): Cells {
  const filled = formulas.getArrayFormulaCellData()[unit()]?.[sheet];
  return cellsIn(api, sheet, area, (row, column) => filled?.[row]?.[column] ?? undefined);
}

type Arrays = Record<number, Record<number, IRange> | undefined> | null | undefined;

const arraysOf = ({ formulas, unit }: GridBook, sheet: string): Arrays =>
  formulas.getArrayFormulaRange()[unit()]?.[sheet];

/** An area as a formula names it: cells, whole columns, or what the array at a cell fills. */
export function areaNamed(text: string, filled: Arrays): Area | undefined {
  const at = text.endsWith("#") ? readPlace(text.slice(0, -1)) : undefined;
  const array = at && filled?.[at.row]?.[at.column];
  if (array) return areaOf(array);
  const [, from, to] = /^\$?([A-Z]{1,3}):\$?([A-Z]{1,3})$/i.exec(text) ?? [];
  if (from === undefined || to === undefined) return readArea(text);
  return { top: 0, left: columnNumber(from), bottom: lastRow - 1, right: columnNumber(to) };
}

const areaOf = ({ startRow, startColumn, endRow, endColumn }: IRange): Area => ({
  top: startRow,
  left: startColumn,
  bottom: endRow,
  right: endColumn,
});
