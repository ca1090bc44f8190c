import { rowBlocks } from "./rowBlocks.ts";
import { rowsOf } from "./rowsOf.ts";

/** A range in parts of whole rows, each of which Excel hands over at once. Its rows and columns must have been counted. */
export const partsOf = (range: Excel.Range): readonly Excel.Range[] =>
  rowBlocks(range.rowCount, range.columnCount).map((block) => rowsOf(range, block));
