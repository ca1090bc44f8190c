import {
  BooleanNumber,
  BorderStyleTypes,
  HorizontalAlign,
  type IBorderStyleData,
  type ICellData,
  type IStyleData,
  type Nullable,
  WrapStrategy,
} from "@univerjs/core";
import type { Area } from "../../../workbook/address.ts";
import type { Workbook } from "../../../workbook/workbook.ts";
import type { Corner } from "../charts/readCharts.ts";
import type { Picture } from "../pictures/pictureOf.ts";
import { type PaperWish, paperWish } from "../printing/paperWish.ts";
import { partsOfReference } from "./cellNamed.ts";
import { areaNamed } from "./cellsNamed.ts";
import type { GridBook } from "./gridBook.ts";
import { sheetPlace } from "./sheetId.ts";

/** A chart, with the cells that its corners lie in. */
export interface PlacedChart {
  readonly picture: Picture;
  readonly from: Corner;
  readonly to: Corner;
}

/** A cell as it is printed. */
export interface PrintedCell {
  /** The first of its columns, among those that are printed. */
  readonly column: number;
  readonly text: string;
  readonly columns: number;
  readonly rows: number;
  readonly align: "left" | "center" | "right";
  /** A number or a day, which is read wrong where it is broken. */
  readonly isNumber: boolean;
  /** Its lines, as CSS has them: above, right, below, left. */
  readonly edges: readonly (string | undefined)[];
  readonly bold: boolean;
  readonly size: number | undefined;
  readonly ink: string | undefined;
  readonly ground: string | undefined;
}

export interface PrintedRow {
  readonly cells: readonly PrintedCell[];
  /** In pixels; it grows where a text needs more lines on paper. */
  readonly height: number;
  /** The file has a page begin here. */
  readonly isPageBegin: boolean;
}

/** A chart as it is printed; all in pixels. */
export interface PrintedChart {
  readonly picture: Picture;
  /** The row that it begins in, among those below the headings, and how far below the row's top. */
  readonly row: number;
  readonly down: number;
  /** From the left edge of the first column. */
  readonly left: number;
  readonly width: number;
  readonly height: number;
}

/** A sheet as far as something stands in it. */
export interface PrintedSheet {
  readonly name: string;
  /** Of the columns, in pixels. */
  readonly widths: readonly number[];
  /** So many columns stay in sight on the screen. */
  readonly frozen: number;
  /** Rows that stay in sight on the screen, and stand on top of each page. */
  readonly headings: readonly PrintedRow[];
  readonly rows: readonly PrintedRow[];
  readonly lines: boolean;
  readonly charts: readonly PrintedChart[];
  readonly wish: PaperWish;
}

/** The sheet in view, as far as its file has it printed; undefined where there is none. */
export function sheetToPrint(
  { api, formulas, unit, sheetName, opened }: GridBook,
  chartsInView: readonly PlacedChart[],
): PrintedSheet | undefined {
  const found = api.getActiveWorkbook()?.getActiveSheet();
  const sheet = found?.getSheet();
  if (!found || !sheet) return undefined;
  const filled = formulas.getArrayFormulaCellData()[unit()]?.[found.getSheetId()];
  const holds = (row: number, column: number): boolean => {
    const cell = filled?.[row]?.[column] ?? sheet.getCellRaw(row, column);
    return hasContent(cell);
  };
  const [columnCount, rowCount] = [sheet.getColumnCount(), sheet.getRowCount()];
  const place = sheetPlace(found.getSheetId());
  const wanted = printedArea(opened()?.workbook, place);
  const wish = paperWish(opened()?.workbook.sheets[place]?.text ?? "");
  const placed = chartsInView.filter(
    ({ from }) =>
      from.row >= wanted.top && from.row <= wanted.bottom && from.column >= wanted.left && from.column <= wanted.right,
  );
  let lastRow = Math.max(-1, ...placed.map(({ to }) => Math.min(to.row, rowCount - 1)));
  let lastColumn = Math.max(-1, ...placed.map(({ to }) => Math.min(to.column, columnCount - 1)));
  // A form is printed with the boxes to write into; a table has room for thousands of rows that nobody wants on paper.
  const counts = wish.isOnePage
    ? (row: number, column: number) => holds(row, column) || hasEdge(sheet.getComposedCellStyle(row, column))
    : holds;
  for (let row = 0; row < rowCount; row += 1)
    for (let column = 0; column < columnCount; column += 1)
      if (counts(row, column)) [lastRow, lastColumn] = [Math.max(lastRow, row), Math.max(lastColumn, column)];
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
      column: columns.indexOf(column),
      text,
      columns: merged
        ? columns.filter((at) => at >= column && at <= merged.endColumn).length
        : mayRunOn
          ? runsOver(text, row, column, style.fs ?? usualSize)
          : 1,
      rows: merged ? upTo(merged.endRow).filter((at) => at >= row && sheet.getRowVisible(at)).length : 1,
      align: aligned[style.ht ?? 0] ?? (isNumber ? "right" : "left"),
      isNumber,
      edges: [style.bd?.t, style.bd?.r, style.bd?.b, style.bd?.l].map(edgeOf),
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
  const visibleRows = (from: number, to: number): readonly number[] =>
    upTo(to).filter((row) => row >= from && sheet.getRowVisible(row));
  const rowsOf = (rows: readonly number[]): readonly PrintedRow[] =>
    rows.map((row) => ({
      cells: cellsOf(row),
      height: sheet.getRowHeight(row),
      isPageBegin: wish.pagesBeginAt.has(row),
    }));
  const frozen = Math.min(sheet.getFreeze().ySplit, lastRow + 1);
  const frozenColumns = opened()?.shown.data.sheets[found.getSheetId()]?.freeze?.xSplit ?? 0;
  const below = visibleRows(Math.max(frozen, wanted.top), lastRow);

  const widthTo = (column: number, right: number): number =>
    columns
      .filter((at) => at <= column)
      .reduce(
        (sum, at) => sum + (at < column ? sheet.getColumnWidth(at) : Math.min(right, sheet.getColumnWidth(at))),
        0,
      );
  const chartAt = ({ from, to, picture }: PlacedChart): PrintedChart => {
    const row = below.findIndex((at) => at >= from.row);
    const down = below[row] === from.row ? from.down : 0;
    const covered = visibleRows(from.row, to.row - 1).reduce((sum, at) => sum + sheet.getRowHeight(at), 0);
    const left = widthTo(from.column, from.right);
    return {
      picture,
      row: Math.max(0, row),
      down,
      left,
      width: widthTo(to.column, to.right) - left,
      height: covered - from.down + to.down,
    };
  };
  return {
    name: sheetName(found.getSheetId()),
    widths: columns.map((column) => sheet.getColumnWidth(column)),
    // Those of the workbook: on a narrow screen fewer are frozen.
    frozen: columns.filter((column) => column < frozenColumns).length,
    headings: rowsOf(visibleRows(0, frozen - 1)),
    rows: rowsOf(below),
    lines: sheet.getConfig().showGridlines === BooleanNumber.TRUE,
    charts: placed.map(chartAt).filter(({ width, height }) => width > 0 && height > 0),
    wish,
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

const hasEdge = ({ bd }: IStyleData): boolean =>
  [bd?.t, bd?.r, bd?.b, bd?.l].some((edge) => edgeOf(edge) !== undefined);

const edgeOf = (edge: Nullable<IBorderStyleData>): string | undefined =>
  edge && edge.s !== BorderStyleTypes.NONE ? `1px solid ${edge.cl?.rgb ?? "#000000"}` : undefined;

const upTo = (last: number): readonly number[] => Array.from({ length: last + 1 }, (_, at) => at);

const aligned: Readonly<Record<number, PrintedCell["align"]>> = {
  [HorizontalAlign.LEFT]: "left",
  [HorizontalAlign.CENTER]: "center",
  [HorizontalAlign.RIGHT]: "right",
};
