import type { RowBlock } from "./rowBlocks.ts";

/** Whole rows of a range whose columns have been counted. */
export const rowsOf = (range: Excel.Range, { row, height }: RowBlock): Excel.Range =>
  range.getCell(row, 0).getResizedRange(height - 1, range.columnCount - 1);
