import type { Cell } from "../../src/cells/cell.ts";
import { placeText } from "../../src/workbook/address.ts";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";

/** Every cell that holds something, by sheet and address; an empty text counts as nothing. */
export function sheetCells(bytes: Uint8Array): ReadonlyMap<string, Cell> {
  const cells = new Map<string, Cell>();
  for (const { name, rows } of openWorkbook(bytes).sheets) {
    for (const cell of rows.flatMap((row) => row.cells)) {
      if (cell.value !== null && cell.value !== "") cells.set(`${name}!${placeText(cell)}`, cell.value);
    }
  }
  return cells;
}
