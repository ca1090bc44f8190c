// Excel on the web hands over at most 5 MB at a time (published limit), and few cells take more than 100 bytes.
export const cellsAtATime = 20_000;

/** A range in parts of whole rows, each of which Excel hands over at once. Its rows and columns must have been counted. */
export function partsOf(range: Excel.Range): readonly Excel.Range[] {
  const { rowCount, columnCount } = range;
  const rows = Math.max(1, Math.floor(cellsAtATime / columnCount));
  return Array.from({ length: Math.ceil(rowCount / rows) }, (_, index) => {
    const row = index * rows;
    const height = Math.min(rows, rowCount - row);
    return range.getCell(row, 0).getResizedRange(height - 1, columnCount - 1);
  });
}
