import type { Place } from "../../workbook/address.ts";
import type { PlacedList } from "./placeList.ts";
import { rowCell } from "./references.ts";
import type { SheetAuthor } from "./sheetAuthor.ts";

/**
 * Where a list has its whole room from the start, a program would print the rows that are still blank: there only the
 * first rows are printed.
 *
 * @param rows - of each list that are printed
 * @returns the last cell to be printed; undefined where lists are printed as far as they go
 */
export function printedLists(sheet: SheetAuthor, lists: readonly PlacedList[], rows: number): Place | undefined {
  if (sheet.edition === "excel") return undefined;
  const last = lists.map(({ at, gives }) => ({
    row: at.row + rows,
    column: at.column + gives.result.headings.length - 1,
  }));
  for (const list of lists) sayWhenCut(sheet, list, list.at.row + rows);
  return {
    row: Math.max(...last.map(({ row }) => row)),
    column: Math.max(...last.map(({ column }) => column)),
  };
}

/** A line above the question of a list that says when it goes on below the last row that is printed. */
export function sayWhenCut(sheet: SheetAuthor, { at: { row, column } }: PlacedList, lastRow: number): void {
  const next = rowCell({ row: lastRow + 1, column });
  const words = `Printed up to row ${lastRow + 1}: choose all rows and print the selection.`;
  sheet.put({ row: row - 2, column }, { formula: `IF(LEN(${next})=0,"","${words}")` }, "careHeading");
}
