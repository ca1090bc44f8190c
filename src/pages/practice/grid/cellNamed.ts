import { readPlace } from "../../../workbook/address.ts";
import { unquoteSheet } from "../../../workbook/formula/structured.ts";
import { sheetWords } from "../sheetWords.ts";
import type { CellAt, GridBook } from "./gridBook.ts";
import { sheetId } from "./sheetId.ts";

/**
 * The cell that a reference such as 'Sale check'!A1 names, or the first of some; without a sheet, on the one in view.
 *
 * @throws an Error in words where the workbook has no such cell
 */
export function cellNamed(book: GridBook, reference: string): CellAt {
  const { sheet: name, cells } = partsOfReference(reference);
  const [first = ""] = cells.split(":");
  const at = readPlace(first);
  const sheet = name === undefined ? (book.selectedSheet() ?? sheetId(0)) : book.sheetNamed(name);
  if (!at || sheet === undefined) throw new Error(sheetWords.badCell);
  return { sheet, ...at };
}

/** A reference apart: the name of its sheet, if it has one, and the cells. */
export function partsOfReference(reference: string): { readonly sheet: string | undefined; readonly cells: string } {
  const cut = reference.lastIndexOf("!");
  const sheet = cut < 0 ? undefined : unquoteSheet(reference.slice(0, cut));
  return { sheet, cells: reference.slice(cut + 1) };
}
