// Excel on the web hands over at most 5 MB at a time (published limit), and few cells take more than 100 bytes.
export const cellsAtATime = 20_000;

/** Whole rows of a range, counted from its first. */
export interface RowBlock {
  readonly row: number;
  readonly height: number;
}

/** The rows of a range in blocks, each of which Excel hands over at once. */
export function rowBlocks(rowCount: number, columnCount: number): readonly RowBlock[] {
  const rows = Math.max(1, Math.floor(cellsAtATime / columnCount));
  return Array.from({ length: Math.ceil(rowCount / rows) }, (_, index) => {
    const row = index * rows;
    return { row, height: Math.min(rows, rowCount - row) };
  });
}
