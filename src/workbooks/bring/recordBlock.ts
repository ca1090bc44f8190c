import type { Cell } from "../../cells/cell.ts";

export interface BlockRow {
  /** 1-based, in the sheet or the file. */
  readonly row: number;
  readonly cells: readonly Cell[];
}

/** Rows under a heading row, wherever they stand. */
export interface RecordBlock {
  /** The file, and the sheet where it has sheets: `old.xlsx, Cases`. */
  readonly place: string;
  readonly headings: readonly string[];
  readonly rows: readonly BlockRow[];
  /** Added to a date's number to get its serial in the 1900 system. */
  readonly dayOffset: number;
}
