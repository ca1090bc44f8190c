import type { FUniver } from "@univerjs/core/facade";
import type { Cell, Cells } from "../../../cells/cell.ts";
import { cellFromData } from "../../../hosts/headless/valueCells.ts";
import type { Area } from "../../../workbook/address.ts";

/** The cells of an area as they are now, with what arrays fill; blank beyond the last of the sheet. */
export function cellsIn(
  api: FUniver,
  sheetId: string,
  { top, left, bottom, right }: Area,
  filled: (row: number, column: number) => Parameters<typeof cellFromData>[0],
): Cells {
  const sheet = api.getActiveWorkbook()?.getSheetBySheetId(sheetId)?.getSheet();
  const last = Math.min(bottom, (sheet?.getRowCount() ?? 0) - 1);
  const cells: Cell[][] = [];
  for (let row = top; row <= last; row += 1) {
    const line: Cell[] = [];
    for (let column = left; column <= right; column += 1)
      line.push(cellFromData(filled(row, column) ?? sheet?.getCellRaw(row, column) ?? undefined));
    cells.push(line);
  }
  return cells;
}
