import type { IRange } from "@univerjs/core";
import type { Cells } from "../../../cells/cell.ts";
import type { AnyFunction } from "../../../definition/defineFunction.ts";
import { type Area, areaText, columnNumber, readArea, readPlace } from "../../../workbook/address.ts";
import { lastRow } from "../../../workbook/limits.ts";
import type { Found, FoundCells } from "../../parts/explain/cellsGiven.ts";
import { askedOf, type Explanation, explainFormula } from "../../parts/explain/explainFormula.ts";
import { partsOfReference } from "./cellNamed.ts";
import { cellsIn } from "./cellsIn.ts";
import type { CellAt, GridBook } from "./gridBook.ts";

/**
 * The formula of a cell in words; undefined where it holds none.
 *
 * @param message - what is to be said of its error
 */
export function explainCell(
  book: GridBook,
  catalogue: readonly AnyFunction[],
  cell: CellAt,
  message: string | undefined,
): Explanation | undefined {
  const formula = book.formulaAt(cell);
  if (formula === undefined) return undefined;
  const { sheet, row, column } = cell;
  const found: Found = new Map(
    askedOf(formula, catalogue).flatMap((asked) => {
      const cells = foundFor(book, asked, sheet);
      return cells ? [[asked, cells] as const] : [];
    }),
  );
  const filled = arraysOf(book, sheet)?.[row]?.[column];
  const area = filled ? areaOf(filled) : { top: row, left: column, bottom: row, right: column };
  return explainFormula(formula, catalogue, found, { cells: cellsAt(book, sheet, area), message });
}

/** The cells that an argument names as it stands in the formula of a cell of this sheet. */
function foundFor(book: GridBook, asked: string, own: string): FoundCells | undefined {
  const { sheet: name, cells } = partsOfReference(asked);
  const sheet = name === undefined ? own : book.sheetNamed(name);
  const area = sheet === undefined ? undefined : areaNamed(cells, arraysOf(book, sheet));
  if (sheet === undefined || !area) return undefined;
  const before = asked.slice(0, asked.length - cells.length);
  return { address: before + areaText(area), cells: cellsAt(book, sheet, area) };
}

function cellsAt({ api, formulas, unit }: GridBook, sheet: string, area: Area): Cells {
  const filled = formulas.getArrayFormulaCellData()[unit()]?.[sheet];
  return cellsIn(api, sheet, area, (row, column) => filled?.[row]?.[column] ?? undefined);
}

type Arrays = Record<number, Record<number, IRange> | undefined> | null | undefined;

const arraysOf = ({ formulas, unit }: GridBook, sheet: string): Arrays =>
  formulas.getArrayFormulaRange()[unit()]?.[sheet];

/** An area as a formula names it: cells, whole columns, or what the array at a cell fills. */
function areaNamed(text: string, filled: Arrays): Area | undefined {
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
