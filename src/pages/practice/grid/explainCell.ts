import type { AnyFunction } from "../../../definition/defineFunction.ts";
import { placeText } from "../../../workbook/address.ts";
import type { Found } from "../../parts/explain/cellsGiven.ts";
import { askedOf, type Explanation, explainFormula } from "../../parts/explain/explainFormula.ts";
import { cellsFilled, cellsNamed, filledBy } from "./cellsNamed.ts";
import type { CellAt, GridBook } from "./gridBook.ts";

/** A formula in words, and where it stands when it fills the cell from another. */
export interface CellExplained {
  readonly explanation: Explanation;
  readonly from: string | undefined;
}

/**
 * The formula of a cell in words, or that which fills it; undefined where there is none.
 *
 * @param message - what is to be said of the error of a cell
 */
export function explainCell(
  book: GridBook,
  catalogue: readonly AnyFunction[],
  cell: CellAt,
  message: (cell: CellAt) => string | undefined,
): CellExplained | undefined {
  const own = book.formulaAt(cell);
  const at = own === undefined ? filledBy(book, cell) : cell;
  const formula = own ?? book.formulaAt(at);
  if (formula === undefined) return undefined;
  const { sheet, row, column } = at;
  const found: Found = new Map(
    askedOf(formula, catalogue).flatMap((asked) => {
      const cells = cellsNamed(book, asked, sheet);
      return cells ? [[asked, cells] as const] : [];
    }),
  );
  const answer = { cells: cellsFilled(book, sheet, row, column), message: message(at) };
  return {
    explanation: explainFormula(formula, catalogue, found, answer),
    from: at === cell ? undefined : `${book.sheetName(sheet)} ${placeText(at)}`,
  };
}
