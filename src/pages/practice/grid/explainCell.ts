import type { AnyFunction } from "../../../definition/defineFunction.ts";
import type { Found } from "../../parts/explain/cellsGiven.ts";
import { askedOf, type Explanation, explainFormula } from "../../parts/explain/explainFormula.ts";
import { cellsFilled, cellsNamed } from "./cellsNamed.ts";
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
      const cells = cellsNamed(book, asked, sheet);
      return cells ? [[asked, cells] as const] : [];
    }),
  );
  return explainFormula(formula, catalogue, found, { cells: cellsFilled(book, sheet, row, column), message });
}
