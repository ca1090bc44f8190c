import {
  BooleanNumber,
  CellValueType,
  type ICellData,
  type IColumnData,
  type IRange,
  type IRowData,
  type IWorkbookData,
  type IWorksheetData,
} from "@univerjs/core";
import type { Cell } from "../../../cells/cell.ts";
import { isCellError } from "../../../cells/cell.ts";
import { withEmptyText } from "../../../hosts/headless/insides/emptyTexts.ts";
import { fitFunction } from "../../../hosts/headless/insides/fitToCells.ts";
import { type Area, isInside, isOneCell, placeText } from "../../../workbook/address.ts";
import { CertainError, NotWorkedOut } from "../../../workbook/formula/notWorkedOut.ts";
import { type Surroundings, translate } from "../../../workbook/formula/translate.ts";
import type { Sheet, SheetCell } from "../../../workbook/model.ts";
import { type Layout, readLayout } from "../../../workbook/parts/readLayout.ts";
import { type CellLook, readLooks, readThemeColors } from "../../../workbook/parts/readLooks.ts";
import type { Workbook } from "../../../workbook/workbook.ts";
import { sheetId } from "./sheetId.ts";
import { styleOf } from "./styleOf.ts";
import { wrappedLines } from "./wrappedLines.ts";

type Matrix<T> = Record<number, Record<number, T>>;

/** A workbook as the embedded spreadsheet takes it. */
export interface ShownWorkbook {
  readonly data: IWorkbookData;
  /** What array formulas fill, by the id of the sheet: the area by its anchor, and the values. */
  readonly spills: Readonly<Record<string, { areas: Matrix<IRange>; cells: Matrix<ICellData> }>>;
  /** Cells that keep the value they were saved with, with the reason. */
  readonly left: readonly string[];
}

/** Lays a workbook out with the values it was saved with. */
export function shownWorkbook(id: string, workbook: Workbook, around: Surroundings): ShownWorkbook {
  const looks = looksOf(workbook);
  const left: string[] = [];
  const spills: Record<string, { areas: Matrix<IRange>; cells: Matrix<ICellData> }> = {};
  const sheets: Record<string, Partial<IWorksheetData>> = {};
  workbook.sheets.forEach((sheet, index) => {
    const spill = { areas: {}, cells: {} };
    const layout = readLayout(sheet.part, sheet.text);
    const cells = cellsOf(sheet, index, { looks, around, left, spill });
    sheets[sheetId(index)] = sheetData(sheet, index, layout, cells, looks);
    spills[sheetId(index)] = spill;
  });
  return {
    data: {
      id,
      name: "",
      appVersion: "",
      locale: "enUS" as IWorkbookData["locale"],
      sheetOrder: workbook.sheets.map((_, index) => sheetId(index)),
      styles: Object.fromEntries(looks.map((look, number) => [`look${number}`, styleOf(look)])),
      sheets,
    },
    spills,
    left,
  };
}

function looksOf({ files, relationships, styles }: Workbook): readonly CellLook[] {
  const part = (kind: string): string | undefined => {
    const target = relationships.find((link) => link.kind === kind)?.target;
    return target !== undefined && files.has(target) ? target : undefined;
  };
  const theme = part("theme");
  const name = part("styles");
  if (!styles || name === undefined) return [];
  return readLooks(name, styles.text, theme === undefined ? [] : readThemeColors(theme, files.text(theme)));
}

interface Making {
  readonly looks: readonly CellLook[];
  readonly around: Surroundings;
  readonly left: string[];
  readonly spill: { areas: Matrix<IRange>; cells: Matrix<ICellData> };
}

function cellsOf(sheet: Sheet, index: number, making: Making): Matrix<ICellData> {
  const cells: Matrix<ICellData> = {};
  const filled = spillAreas(sheet);
  for (const { row, cells: inRow } of sheet.rows) {
    const line: Record<number, ICellData> = {};
    for (const cell of inRow) {
      const style = making.looks[cell.style] === undefined ? {} : { s: `look${cell.style}` };
      if (cell.formula) {
        line[cell.column] = { ...style, ...formulaCell(sheet, cell, index, making) };
        continue;
      }
      const value = contentOf(cell.value);
      const isFilled = filled.some((area) => isInside(cell, area));
      if (isFilled) put(making.spill.cells, cell.row, cell.column, value);
      line[cell.column] = isFilled ? style : { ...style, ...value };
    }
    if (Object.keys(line).length > 0) cells[row] = line;
  }
  return cells;
}

/** Areas that spilling formulas fill. */
const spillAreas = ({ rows }: Sheet): readonly Area[] =>
  rows.flatMap(({ cells }) =>
    cells.flatMap(({ formula }) =>
      formula?.kind === "array" && formula.area && !isOneCell(formula.area) ? formula.area : [],
    ),
  );

function formulaCell(sheet: Sheet, cell: SheetCell, index: number, { around, left, spill }: Making): ICellData {
  const { formula, row, column, value } = cell;
  if (!formula) return {};
  const content = contentOf(value);
  const keep = (reason: string): ICellData => {
    left.push(`${sheet.name} ${placeText(cell)}: ${reason}`);
    return content;
  };
  if (formula.kind === "data table") return keep("it belongs to a what-if data table");
  try {
    const { formula: text, traits } = translate(formula.text, index, cell, around);
    const { area } = formula;
    if (area && !isOneCell(area)) {
      const { top, left: first, bottom, right } = area;
      put(spill.areas, row, column, { startRow: top, startColumn: first, endRow: bottom, endColumn: right });
      put(spill.cells, row, column, content);
      if (!traits.foot && !cell.dynamic)
        return { ...content, f: `=${fitFunction}(${text.slice(1)},${bottom - top + 1},${right - first + 1})` };
    }
    return { ...content, f: text };
  } catch (error) {
    if (error instanceof NotWorkedOut || error instanceof CertainError) return keep(error.message);
    throw error;
  }
}

function put<T>(matrix: Matrix<T>, row: number, column: number, value: T): void {
  const line = matrix[row] ?? {};
  line[column] = value;
  matrix[row] = line;
}

/** A value in the embedded spreadsheet's own words. */
function contentOf(value: Cell): ICellData {
  if (value === null) return {};
  if (typeof value === "number") return { v: value, t: CellValueType.NUMBER };
  if (typeof value === "boolean") return { v: value ? 1 : 0, t: CellValueType.BOOLEAN };
  if (isCellError(value)) return { v: value.error, t: CellValueType.STRING };
  return withEmptyText({ v: value, t: CellValueType.STRING });
}

// A letter of the usual font is 7 pixels wide and a cell has 5 around (ECMA-376 Part 1 §18.3.1.13); a point is 4/3 pixels.
const letterWidth = 7;
const aroundText = 5;
const pixelsWide = (characters: number): number => Math.trunc(characters * letterWidth + aroundText);
const pixelsHigh = (points: number): number => Math.round((points * 4) / 3);

// Room below and beside what is there, to type in.
const spareRows = 50;
const spareColumns = 8;
const fewestColumns = 20;

function sheetData(
  sheet: Sheet,
  index: number,
  { widths, heights, hiddenRows, usualWidth, usualHeight, frozen, gridLines }: Layout,
  cellData: Matrix<ICellData>,
  looks: readonly CellLook[],
): Partial<IWorksheetData> {
  const lastRow = sheet.rows.reduce((most, { row }) => Math.max(most, row), 0);
  const lastColumn = sheet.rows.reduce((most, { cells }) => Math.max(most, cells.at(-1)?.column ?? 0), 0);
  const bottoms = sheet.tables.map(({ area }) => area.bottom);
  const columnCount = Math.max(fewestColumns, lastColumn + 1 + spareColumns);
  const columnData: Record<number, IColumnData> = {};
  for (const { from, to, width, hidden } of widths) {
    for (let column = from; column <= Math.min(to, columnCount - 1); column += 1) {
      columnData[column] = { w: pixelsWide(width), ...(hidden ? { hd: BooleanNumber.TRUE } : {}) };
    }
  }
  for (const { from, to, style } of sheet.columnStyles) {
    if (looks[style] === undefined) continue;
    for (let column = from; column <= Math.min(to, columnCount - 1); column += 1)
      columnData[column] = { ...columnData[column], s: `look${style}` };
  }
  const rowData: Record<number, IRowData> = {};
  for (const [row, height] of heights) rowData[row] = { h: pixelsHigh(height), ia: BooleanNumber.FALSE };
  const usual = pixelsHigh(usualHeight ?? 15);
  const roomIn = (column: number): number =>
    ((columnData[column]?.w ?? pixelsWide(usualWidth ?? 9.14)) - aroundText) / letterWidth;
  for (const { row, cells } of sheet.rows) {
    // A height that the file leaves open is what the wrapped texts of the row need.
    if (heights.has(row)) continue;
    const lines = cells.map((cell) =>
      typeof cell.value === "string" &&
      looks[cell.style]?.wraps &&
      !sheet.merged.some((area) => isInside({ row, column: cell.column }, area))
        ? wrappedLines(cell.value, roomIn(cell.column))
        : 1,
    );
    const most = Math.max(1, ...lines);
    if (most > 1) rowData[row] = { h: most * usual };
  }
  for (const row of hiddenRows) rowData[row] = { ...rowData[row], hd: BooleanNumber.TRUE };
  return {
    id: sheetId(index),
    name: sheet.name,
    rowCount: Math.max(lastRow, ...bottoms) + 1 + spareRows,
    columnCount,
    cellData,
    columnData,
    rowData,
    mergeData: sheet.merged.map(({ top, left, bottom, right }) => ({
      startRow: top,
      startColumn: left,
      endRow: bottom,
      endColumn: right,
    })),
    defaultColumnWidth: pixelsWide(usualWidth ?? 9.14),
    defaultRowHeight: usual,
    showGridlines: gridLines ? BooleanNumber.TRUE : BooleanNumber.FALSE,
    freeze: {
      xSplit: frozen.columns,
      ySplit: frozen.rows,
      startRow: frozen.rows === 0 ? -1 : frozen.rows,
      startColumn: frozen.columns === 0 ? -1 : frozen.columns,
    },
  };
}
