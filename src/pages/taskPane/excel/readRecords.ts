import { type Cell, type Cells, type ErrorCode, errorCodes } from "../../../cells/cell.ts";
import { Problem } from "../../../cells/problem.ts";
import { words } from "../../words.ts";

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

// Excel on the web hands over at most 5 MB at a time (published limit); a row of records is well under 1 kB.
const rowsAtATime = 4000;

/**
 * Reads the records that the selection lies in: the whole table where there is one, the block of filled cells around a
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
    for (let first = 0; first < range.rowCount; first += rowsAtATime) {
      const height = Math.min(rowsAtATime, range.rowCount - first);
      const part = range.getCell(first, 0).getResizedRange(height - 1, range.columnCount - 1);
      part.load("values,valueTypes");
      await context.sync();
      const { values, valueTypes } = part;
      for (const [row, cellsOfRow] of values.entries())
        cells.push(cellsOfRow.map((value, column) => cellOf(value, valueTypes[row]?.[column])));
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
  const count = tables.getCount();
  const used = selected.getUsedRangeOrNullObject(true);
  used.load("address");
  await context.sync();
  if (count.value > 0) return tables.getFirst().getRange();
  // cellCount is -1 where a selection has more cells than it can count.
  if (selected.cellCount === 1) return selected.getSurroundingRegion();
  return used.isNullObject ? selected : used;
}

function cellOf(value: unknown, type: string | undefined): Cell {
  if (type === "Error") return { error: errorCodes.find((code) => code === value) ?? ("#VALUE!" satisfies ErrorCode) };
  return value === "" ? null : (value as Cell);
}
