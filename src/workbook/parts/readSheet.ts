import { type Area, addressKey, placeText, readArea } from "../address.ts";
import { lastColumn, lastRow } from "../limits.ts";
import type { Sheet, SheetCell, SheetRow } from "../model.ts";
import { WorkbookProblem } from "../workbookProblem.ts";
import { isYes } from "../xml/isYes.ts";
import { type Opening, walkXml } from "../xml/walkXml.ts";
import { prefixOf } from "./readStyles.ts";
import { readValue } from "./readValue.ts";
import { type OpenFormula, storedFormulas } from "./storedFormulas.ts";

type Grid = Pick<Sheet, "rows" | "data" | "prefix" | "columnStyles" | "merged" | "filters"> & {
  readonly tableParts: boolean;
};

type OpenRow = { -readonly [K in keyof SheetRow]: SheetRow[K] } & { cells: SheetCell[] };

type ClosedCell = { -readonly [K in keyof SheetCell]: SheetCell[K] };

interface OpenCell {
  readonly row: number;
  readonly column: number;
  readonly style: number;
  readonly type: string;
  readonly dynamic: boolean;
  readonly start: number;
  readonly implied: boolean;
  extraStart: number;
  extra: string | undefined;
  value: string | undefined;
  /** It holds an element for its value, which may be empty. */
  hasValue: boolean;
  formula: OpenFormula | undefined;
}

export interface SheetReading {
  readonly part: string;
  readonly text: string;
  readonly sharedStrings: readonly string[];
  /** Whether a cell metadata number marks a dynamic array formula. */
  readonly isDynamic: (cellMetadata: number) => boolean;
  /** The formula of a follower of a shared formula. */
  readonly shift: (formula: string, rows: number, columns: number) => string;
  /** Days between the workbook's serials and those of the 1900 system. */
  readonly dayOffset: number;
}

/** The cells of a sheet part with their places in its text. */
export function readSheet({ part, text, sharedStrings, isDynamic, shift, dayOffset }: SheetReading): Grid {
  const rows: SheetRow[] = [];
  const columnStyles: { from: number; to: number; style: number }[] = [];
  const merged: Area[] = [];
  const filters: Area[] = [];
  let filter: Area | undefined;
  let data: { start: number; inner: number; close: number; end: number } | undefined;
  let prefix = "";
  let depth = 0;
  let inData = false;
  // How deep the extension of a cell is, which may hold anything; 0 outside.
  let extraDepth = 0;
  let tableParts = false;
  let row: OpenRow | undefined;
  let cell: OpenCell | undefined;
  let taking: "value" | "formula" | "inline" | undefined;
  let phonetic = false;
  let nextRow = 0;
  let nextColumn = 0;

  const openRow = ({ attributes, start, end }: Opening): OpenRow => {
    const { r } = attributes;
    if (r !== undefined && !digits.test(r)) throw outside(part, `row ${r}`);
    const number = r === undefined ? nextRow : Number(r) - 1;
    if (number < 0 || number >= lastRow) throw outside(part, `row ${r}`);
    nextRow = number + 1;
    nextColumn = 0;
    const style =
      attributes.s !== undefined && isYes(attributes.customFormat ?? "1") ? Number(attributes.s) : undefined;
    const implied = attributes.r === undefined ? { implied: true as const } : {};
    const hidden = isYes(attributes.hidden) ? { hidden: true as const } : {};
    return { row: number, style, ...implied, ...hidden, start, inner: end, close: end, end, cells: [] };
  };

  const openCell = ({ attributes, start }: Opening): OpenCell => {
    const { r, s: style = "0", t: type = "n", cm } = attributes;
    let at = row?.row;
    let column = nextColumn;
    if (r !== undefined) {
      const key = addressKey(r);
      at = Math.floor(key / lastColumn);
      column = key % lastColumn;
    }
    if (at === undefined || column >= lastColumn || at !== row?.row) throw outside(part, `cell ${r}`);
    nextColumn = column + 1;
    const dynamic = cm !== undefined && isDynamic(Number(cm));
    const implied = r === undefined;
    // Written out, here and where the cell closes: spreading one object into another costs more than parsing the cell.
    return {
      row: at,
      column,
      style: Number(style),
      type,
      dynamic,
      start,
      implied,
      extraStart: 0,
      extra: undefined,
      value: undefined,
      hasValue: false,
      formula: undefined,
    };
  };

  const formulas = storedFormulas(part, shift);

  walkXml(part, text, {
    open(element) {
      const { name, attributes, start, end, selfClosing } = element;
      depth += 1;
      if (depth === 1) prefix = prefixOf(text, start, name);
      if (extraDepth > 0) return;
      if (name === "c" && row) cell = openCell(element);
      else if (name === "v") {
        taking = "value";
        if (cell) cell.hasValue = true;
      } else if (name === "f" && cell) {
        cell.formula = { attributes, start, end, text: "" };
        taking = "formula";
      } else if (name === "t" && cell) taking = phonetic ? undefined : "inline";
      else if (name === "rPh") phonetic = true;
      else if (name === "extLst" && cell) {
        cell.extraStart = start;
        extraDepth = depth;
      } else if (name === "row" && inData) row = openRow(element);
      else if (name === "sheetData") {
        data = { start, inner: end, close: end, end };
        inData = true;
      } else if (name === "col") {
        const { min = "1", max = min, style } = attributes;
        if (style !== undefined)
          columnStyles.push({ from: Number(min) - 1, to: Number(max) - 1, style: Number(style) });
      } else if (name === "mergeCell") {
        const area = readArea(attributes.ref ?? "");
        if (area) merged.push(area);
      } else if (name === "autoFilter") filter = readArea(attributes.ref ?? "");
      else if (name === "filterColumn" && filter) {
        filters.push(filter);
        filter = undefined;
      } else if (name === "tablePart") tableParts = true;
      if (selfClosing && (name === "v" || name === "t")) taking = undefined;
    },
    text(piece) {
      if (!cell || taking === undefined) return;
      if (taking === "formula" && cell.formula) cell.formula.text += piece;
      else cell.value = (cell.value ?? "") + piece;
    },
    close(name, start, end) {
      depth -= 1;
      if (extraDepth > 0 && depth >= extraDepth) return;
      if (name === "v" || name === "t") taking = undefined;
      else if (name === "rPh") phonetic = false;
      else if (name === "extLst" && cell) {
        cell.extra = text.slice(cell.extraStart, end);
        extraDepth = 0;
      } else if (name === "f" && cell?.formula) {
        cell.formula.end = end;
        taking = undefined;
      } else if (name === "c" && cell && row) {
        const { row: at, column, style, dynamic, start: from, formula } = cell;
        const value = readValue(cell, sharedStrings, part, dayOffset);
        const closed: ClosedCell = { row: at, column, style, dynamic, value, start: from, end };
        if (formula) {
          closed.formula = formulas(formula, cell);
          if (!cell.hasValue) closed.unsaved = true;
        }
        if (cell.implied) closed.implied = true;
        if (cell.extra !== undefined) closed.extra = cell.extra;
        row.cells.push(closed);
        cell = undefined;
      } else if (name === "row" && row) {
        row.close = row.inner === end ? end : start;
        row.end = end;
        rows.push(row);
        row = undefined;
      } else if (name === "sheetData" && data) {
        data = { ...data, close: data.inner === end ? end : start, end };
        inData = false;
      }
    },
  });
  if (!data) throw new WorkbookProblem(`The workbook is damaged: its part ${part} holds no cells.`);
  refuseTwice(rows, part);
  return { rows, data, prefix, columnStyles, merged, filters, tableParts };
}

const outside = (part: string, what: string): WorkbookProblem =>
  new WorkbookProblem(`The workbook is damaged: ${what} in ${part} lies outside a sheet.`);

const digits = /^[0-9]{1,7}$/;

function refuseTwice(rows: readonly SheetRow[], part: string): void {
  const row = firstTwice(rows, ({ row }) => row);
  if (row) throw new WorkbookProblem(`The workbook is damaged: ${part} holds row ${row.row + 1} twice.`);
  for (const { cells } of rows) {
    const cell = firstTwice(cells, ({ column }) => column);
    if (cell) throw new WorkbookProblem(`The workbook is damaged: ${part} holds cell ${placeText(cell)} twice.`);
  }
}

function firstTwice<T>(items: readonly T[], placeOf: (item: T) => number): T | undefined {
  // In order, as nearly every writer has them, none can be there twice.
  let last = -1;
  let inOrder = true;
  for (const item of items) {
    const place = placeOf(item);
    inOrder &&= place > last;
    last = place;
  }
  if (inOrder) return undefined;
  const seen = new Set<number>();
  return items.find((item) => seen.size === seen.add(placeOf(item)).size);
}
