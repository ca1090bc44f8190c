import { type Cell, isCellError } from "../../../cells/cell.ts";
import type { Area } from "../../../workbook/address.ts";
import { type FormulaNode, parseFormula } from "../../../workbook/formula/parseFormula.ts";
import type { SheetArea } from "../../../workbook/formula/referencesIn.ts";
import { lastColumn, lastRow } from "../../../workbook/limits.ts";
import type { Calling, WorksheetFunction } from "./evaluateFormula.ts";
import { numberOf, textOf } from "./operators.ts";
import { errorOf, firstOf, gridOr, isGrid, isReference, type Reference, type Value } from "./values.ts";

export interface Places {
  readonly sheetByName: ReadonlyMap<string, number>;
  /** Names of the workbook by their name in capitals, each as a formula. */
  readonly names: ReadonlyMap<string, string>;
  /** The cells that the formula in a cell fills. */
  readonly spillAt: (sheet: number, row: number, column: number) => Area | undefined;
  readonly isFormula: (sheet: number, row: number, column: number) => boolean;
}

const reference = (sheet: number, area: Area): Reference => ({ areas: [{ sheet, area }] });
const isOnSheet = ({ top, left, bottom, right }: Area): boolean =>
  top >= 0 && left >= 0 && bottom < lastRow && right < lastColumn && top <= bottom && left <= right;

function number(value: Value | undefined, otherwise: number, calling: Calling): number | ReturnType<typeof errorOf> {
  if (value === undefined) return otherwise;
  const cell = firstOf(calling.content(value));
  if (isCellError(cell)) return cell;
  const found = numberOf(cell, calling.toNumber);
  return found === undefined ? errorOf("#VALUE!") : Math.trunc(found);
}

const areaOf = (value: Value | undefined): SheetArea | undefined =>
  isReference(value) && value.areas.length === 1 ? value.areas[0] : undefined;

function offset([from, down, across, height, width]: readonly (Value | undefined)[], calling: Calling): Value {
  if (isCellError(from as Cell)) return from as Cell;
  const start = areaOf(from);
  if (!start) return errorOf("#VALUE!");
  const { area, sheet } = start;
  const numbers = [
    number(down, 0, calling),
    number(across, 0, calling),
    number(height, area.bottom - area.top + 1, calling),
    number(width, area.right - area.left + 1, calling),
  ];
  const error = numbers.find((one) => typeof one !== "number");
  if (error !== undefined) return error;
  const [rows, columns, high, broad] = numbers as [number, number, number, number];
  if (high === 0 || broad === 0) return errorOf("#REF!");
  const [top, left] = [area.top + rows, area.left + columns];
  const wanted = {
    top: high > 0 ? top : top + high + 1,
    left: broad > 0 ? left : left + broad + 1,
    bottom: high > 0 ? top + high - 1 : top,
    right: broad > 0 ? left + broad - 1 : left,
  };
  return isOnSheet(wanted) ? reference(sheet, wanted) : errorOf("#REF!");
}

function index([from, row, column, which]: readonly (Value | undefined)[], calling: Calling): Value {
  if (isCellError(from as Cell)) return from as Cell;
  const [down, across, nth] = [number(row, 0, calling), number(column, 0, calling), number(which, 1, calling)];
  for (const one of [down, across, nth]) if (typeof one !== "number") return one;
  let [r, c] = [down as number, across as number];
  if (r < 0 || c < 0) return errorOf("#VALUE!");
  if (isReference(from)) {
    const chosen = from.areas[(nth as number) - 1];
    if (!chosen) return errorOf("#REF!");
    const { top, left, bottom, right } = chosen.area;
    if (column === undefined && top === bottom && left !== right) [r, c] = [0, r];
    const wanted = {
      top: r === 0 ? top : top + r - 1,
      bottom: r === 0 ? bottom : top + r - 1,
      left: c === 0 ? left : left + c - 1,
      right: c === 0 ? right : left + c - 1,
    };
    return wanted.bottom > bottom || wanted.right > right ? errorOf("#REF!") : reference(chosen.sheet, wanted);
  }
  const content = calling.content(from);
  const grid = isGrid(content) ? content.grid : [[content]];
  if (column === undefined && grid.length === 1 && (grid[0]?.length ?? 0) > 1) [r, c] = [0, r];
  if (r > grid.length || c > (grid[0]?.length ?? 0)) return errorOf("#REF!");
  const rows = r === 0 ? grid : [grid[r - 1] as Cell[]];
  return gridOr(c === 0 ? rows : rows.map((line) => [line[c - 1] ?? null]));
}

const relative = /^(?:R(\d+)?C(\d+)?)$/i;

function indirect(
  [text, style]: readonly (Value | undefined)[],
  calling: Calling,
  { sheetByName, names }: Places,
): Value {
  const content = calling.content(text);
  if (isGrid(content)) return errorOf("#VALUE!");
  if (isCellError(content)) return content;
  const written = textOf(content).trim();
  const inRows = style !== undefined && calling.content(style);
  if (style !== undefined && (inRows === false || inRows === 0)) {
    const [, sheetPart, rest = written] = /^(.*!)?(.*)$/.exec(written) ?? [];
    const [, row, column] = relative.exec(rest) ?? [];
    if (!row || !column) return errorOf("#REF!");
    const sheet = sheetPart
      ? sheetByName.get(sheetPart.slice(0, -1).replace(/^'|'$/g, "").replaceAll("''", "'").toLowerCase())
      : calling.at.sheet;
    if (sheet === undefined) return errorOf("#REF!");
    const place = { row: Number(row) - 1, column: Number(column) - 1 };
    const area = { top: place.row, bottom: place.row, left: place.column, right: place.column };
    return isOnSheet(area) ? reference(sheet, area) : errorOf("#REF!");
  }
  let node: FormulaNode;
  try {
    const named = names.get(written.toUpperCase());
    node = parseFormula(`=${named ?? written}`, calling.at.sheet, sheetByName);
  } catch {
    return errorOf("#REF!");
  }
  const isPlain = node.kind === "area" || node.kind === "references" || names.has(written.toUpperCase());
  if (!isPlain) return errorOf("#REF!");
  const value = calling.evaluate(node);
  return isReference(value) ? value : errorOf("#REF!");
}

const lines = (from: number, to: number, down: boolean): Value => {
  const numbers = Array.from({ length: to - from + 1 }, (_, index) => from + index + 1);
  return gridOr(down ? numbers.map((one) => [one]) : [numbers]);
};

/** Functions that name cells or say where they are. */
export function placeFunctions(places: Places): ReadonlyMap<string, WorksheetFunction> {
  const size =
    (of: (area: Area) => number, ofGrid: (grid: readonly (readonly Cell[])[]) => number): WorksheetFunction =>
    ([value], calling) => {
      if (isCellError(value as Cell)) return value as Cell;
      const area = areaOf(value);
      if (area) return of(area.area);
      const content = calling.content(value);
      return isGrid(content) ? ofGrid(content.grid) : isReference(value) ? errorOf("#REF!") : 1;
    };
  const where =
    (down: boolean): WorksheetFunction =>
    ([value], calling) => {
      if (value === undefined) return down ? calling.at.row + 1 : calling.at.column + 1;
      const found = areaOf(value);
      if (!found) return isCellError(value as Cell) ? (value as Cell) : errorOf("#VALUE!");
      const { top, bottom, left, right } = found.area;
      calling.store.spend(down ? bottom - top : right - left);
      // In a formula for one cell the first is shown, and no list is made.
      if (!calling.arrays) return down ? top + 1 : left + 1;
      return down ? lines(top, bottom, true) : lines(left, right, false);
    };
  return new Map<string, WorksheetFunction>([
    ["OFFSET", offset],
    ["INDEX", index],
    ["INDIRECT", (given, calling) => indirect(given, calling, places)],
    ["ROW", where(true)],
    ["COLUMN", where(false)],
    [
      "ROWS",
      size(
        ({ top, bottom }) => bottom - top + 1,
        ({ length }) => length,
      ),
    ],
    [
      "COLUMNS",
      size(
        ({ left, right }) => right - left + 1,
        ([line]) => line?.length ?? 0,
      ),
    ],
    ["AREAS", ([value]) => (isReference(value) ? value.areas.length : errorOf("#VALUE!"))],
    [
      "SHEET",
      ([value], calling) => {
        if (value === undefined) return calling.at.sheet + 1;
        if (isReference(value)) return (value.areas[0]?.sheet ?? 0) + 1;
        const content = calling.content(value);
        const sheet = places.sheetByName.get(isGrid(content) ? "" : textOf(content).toLowerCase());
        return sheet === undefined ? errorOf("#N/A") : sheet + 1;
      },
    ],
    [
      "SHEETS",
      ([value]) =>
        value === undefined
          ? places.sheetByName.size
          : isReference(value)
            ? new Set(value.areas.map(({ sheet }) => sheet)).size
            : errorOf("#REF!"),
    ],
    [
      "ISFORMULA",
      ([value]) => {
        const found = areaOf(value);
        return found ? places.isFormula(found.sheet, found.area.top, found.area.left) : errorOf("#VALUE!");
      },
    ],
    [
      "ANCHORARRAY",
      ([value], calling) => {
        const found = areaOf(value);
        if (!found) return isCellError(value as Cell) ? (value as Cell) : errorOf("#REF!");
        const { top, left } = found.area;
        const held = calling.store.at(found.sheet, top, left);
        if (isCellError(held) && held.error === "#SPILL!") return held;
        const area = places.spillAt(found.sheet, top, left);
        return area ? reference(found.sheet, area) : errorOf("#REF!");
      },
    ],
  ]);
}
