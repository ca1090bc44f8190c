import {
  BooleanNumber,
  HorizontalAlign,
  type ICellData,
  type IStyleData,
  type Nullable,
  WrapStrategy,
} from "@univerjs/core";
import type { Area } from "../../../workbook/address.ts";
import type { Workbook } from "../../../workbook/workbook.ts";
import { partsOfReference } from "./cellNamed.ts";
import { areaNamed } from "./cellsNamed.ts";
import type { GridBook } from "./gridBook.ts";
import { sheetPlace } from "./sheetId.ts";

/** A cell as it is printed. */
export interface PrintedCell {
  readonly text: string;
  readonly columns: number;
  readonly rows: number;
  readonly align: "left" | "center" | "right";
  readonly bold: boolean;
  readonly size: number | undefined;
  readonly ink: string | undefined;
  readonly ground: string | undefined;
}

/** A sheet as far as something stands in it. */
export interface PrintedSheet {
  readonly name: string;
  /** Of the columns, in pixels. */
  readonly widths: readonly number[];
  /** Rows that stay in sight on the screen, and stand on top of each page. */
  readonly headings: readonly (readonly PrintedCell[])[];
  readonly rows: readonly (readonly PrintedCell[])[];
  readonly lines: boolean;
}

/** The sheet in view, as far as its file has it printed; undefined where there is none. */
export function sheetToPrint({ api, formulas, unit, sheetName, opened }: GridBook): PrintedSheet | undefined {
  const found = api.getActiveWorkbook()?.getActiveSheet();
  const sheet = found?.getSheet();
  if (!found || !sheet) return undefined;
  const filled = formulas.getArrayFormulaCellData()[unit()]?.[found.getSheetId()];
  const holds = (row: number, column: number): boolean => {
    const cell = filled?.[row]?.[column] ?? sheet.getCellRaw(row, column);
    return hasContent(cell);
  };
  const [columnCount, rowCount] = [sheet.getColumnCount(), sheet.getRowCount()];
  const wanted = printedArea(opened()?.workbook, sheetPlace(found.getSheetId()));
  let [lastRow, lastColumn] = [-1, -1];
  for (let row = 0; row < rowCount; row += 1)
    for (let column = 0; column < columnCount; column += 1)
      if (holds(row, column)) [lastRow, lastColumn] = [row, Math.max(lastColumn, column)];
  lastRow = Math.min(lastRow, wanted.bottom);
  const columns = upTo(Math.min(lastColumn, wanted.right)).filter(
    (column) => column >= wanted.left && sheet.getColVisible(column),
  );
  const isBlank = (row: number, column: number): boolean => !holds(row, column);

  /** A text that is wider than its column runs on over blank cells, as in a sheet; what is longer still is broken. */
  const runsOver = (text: string, row: number, column: number, size: number): number => {
    const widest = text.split("\n").reduce((most, line) => Math.max(most, line.length), 0) * size * letterWidth;
    let [over, width] = [1, sheet.getColumnWidth(column)];
    for (const at of columns.slice(columns.indexOf(column) + 1)) {
      if (width >= widest || !isBlank(row, at) || sheet.getMergedCell(row, at)) break;
      width += sheet.getColumnWidth(at);
      over += 1;
    }
    return over;
  };

  const cellAt = (row: number, column: number): PrintedCell | undefined => {
    const merged = sheet.getMergedCell(row, column);
    const isCovered = merged && (merged.startRow !== row || merged.startColumn !== column);
    if (isCovered) return undefined;
    const style: IStyleData = sheet.getComposedCellStyle(row, column);
    const text = isBlank(row, column) ? "" : String(found.getRange(row, column).getDisplayValue() ?? "");
    const value = filled?.[row]?.[column]?.v ?? sheet.getCellRaw(row, column)?.v;
    const isNumber = typeof value === "number";
    const mayRunOn = !isNumber && style.tb !== WrapStrategy.WRAP;
    return {
      text,
      columns: merged
        ? columns.filter((at) => at >= column && at <= merged.endColumn).length
        : mayRunOn
          ? runsOver(text, row, column, style.fs ?? usualSize)
          : 1,
      rows: merged ? upTo(merged.endRow).filter((at) => at >= row && sheet.getRowVisible(at)).length : 1,
      align: aligned[style.ht ?? 0] ?? (isNumber ? "right" : "left"),
      bold: style.bl === BooleanNumber.TRUE,
      size: style.fs,
      ink: style.cl?.rgb ?? undefined,
      ground: style.bg?.rgb ?? undefined,
    };
  };
  const cellsOf = (row: number): readonly PrintedCell[] => {
    const cells: PrintedCell[] = [];
    for (let at = 0; at < columns.length; ) {
      const cell = cellAt(row, columns[at] as number);
      if (cell) cells.push(cell);
      at += cell?.columns ?? 1;
    }
    return cells;
  };
  const rowsFrom = (from: number, to: number) =>
    upTo(to)
      .filter((row) => row >= from && sheet.getRowVisible(row))
      .map(cellsOf);
  const frozen = Math.min(sheet.getFreeze().ySplit, lastRow + 1);
  return {
    name: sheetName(found.getSheetId()),
    widths: columns.map((column) => sheet.getColumnWidth(column)),
    headings: rowsFrom(0, frozen - 1),
    rows: rowsFrom(Math.max(frozen, wanted.top), lastRow),
    lines: sheet.getConfig().showGridlines === BooleanNumber.TRUE,
  };
}

/** What the file wants printed of a sheet; all of it where it says nothing, or several areas. */
function printedArea(workbook: Workbook | undefined, sheet: number): Area {
  const named = workbook?.names.find((name) => name.name === "_xlnm.Print_Area" && name.sheet === sheet);
  const { cells } = partsOfReference(named?.text ?? "");
  return (
    (named?.text.includes(",") ? undefined : areaNamed(cells, undefined)) ?? {
      top: 0,
      left: 0,
      bottom: Number.POSITIVE_INFINITY,
      right: Number.POSITIVE_INFINITY,
    }
  );
}

/** In points; what a cell has that says nothing. */
const usualSize = 11;
// A letter of the sheet's fonts is a little more than half as wide as high, and a point is 4/3 of a pixel (CSS Values 4 §6.2).
const letterWidth = 0.6 * (4 / 3);

const hasContent = (cell: Nullable<ICellData>): boolean =>
  (cell?.v ?? "") !== "" || (cell?.p?.body?.dataStream ?? "").trim() !== "";

const upTo = (last: number): readonly number[] => Array.from({ length: last + 1 }, (_, at) => at);

const aligned: Readonly<Record<number, PrintedCell["align"]>> = {
  [HorizontalAlign.LEFT]: "left",
  [HorizontalAlign.CENTER]: "center",
  [HorizontalAlign.RIGHT]: "right",
};
