import { expect, it } from "vitest";
import { cellsAtATime, rowBlocks } from "../../../../src/pages/taskPane/excel/rowBlocks.ts";

it.each([
  [1, 1],
  [20_000, 1],
  [20_001, 1],
  [1_048_576, 3],
  [7, 16_384],
])("%i rows of %i columns are all there once, in blocks that are handed over", (rowCount, columnCount) => {
  const blocks = rowBlocks(rowCount, columnCount);
  let next = 0;
  for (const { row, height } of blocks) {
    expect(row).toBe(next);
    expect(height * columnCount).toBeLessThanOrEqual(cellsAtATime);
    next += height;
  }
  expect(next).toBe(rowCount);
});
