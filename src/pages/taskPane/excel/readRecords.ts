import type { Cell, Cells } from "../../../cells/cell.ts";
import { Problem } from "../../../cells/problem.ts";
import { words } from "../../words.ts";
import { cellFrom } from "./cellFrom.ts";
import { partsOf } from "./partsOf.ts";

/** The records of a sheet, headings first. */
export interface SheetRecords {
  readonly sheet: string;
  /** As Excel writes it: `Cases!A4:L310`. */
  readonly address: string;
  /** 1-based row of the headings, and 1-based column of the first of them, in the sheet. */
  readonly top: number;
  readonly left: number;
  readonly headings: readonly Cell[];
  readonly rows: Cells;
}

/**
 * Reads the records that the selection lies in: the table where there is one, without its totals, the block of filled cells around a
 * lone cell, otherwise the selected cells that are in use.
 *
 * @throws Problem when there is nothing under the headings
 */
export const readRecords = (): Promise<SheetRecords> =>
  Excel.run(async (context) => {
    const range = await recordRange(context);
    range.load("address,rowIndex,columnIndex,rowCount,columnCount");
    range.worksheet.load("name");
    await context.sync();
    if (range.rowCount < 2) throw new Problem(words.records.tooSmall(range.address));
    const cells: Cell[][] = [];
    for (const part of partsOf(range)) {
      part.load("values,valueTypes");
      await context.sync();
      const { values, valueTypes } = part;
      for (const [row, cellsOfRow] of values.entries())
        cells.push(cellsOfRow.map((value, column) => cellFrom(value, valueTypes[row]?.[column])));
    }
    const [headings = [], ...rows] = cells;
    return {
      sheet: range.worksheet.name,
      address: range.address,
      top: range.rowIndex + 1,
      left: range.columnIndex + 1,
      headings,
      rows,
    };
  });

async function recordRange(context: Excel.RequestContext): Promise<Excel.Range> {
  const selected = context.workbook.getSelectedRange();
  selected.load("cellCount");
  const tables = selected.getTables(false);
  tables.load("items/showTotals");
  const used = selected.getUsedRangeOrNullObject(true);
  used.load("address");
  await context.sync();
  const [table] = tables.items;
  if (table) return table.showTotals ? table.getRange().getResizedRange(-1, 0) : table.getRange();
  // cellCount is -1 where a selection has more cells than it can count.
  if (selected.cellCount === 1) return selected.getSurroundingRegion();
  return used.isNullObject ? selected : used;
}
