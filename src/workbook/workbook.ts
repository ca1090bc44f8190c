import type { Cell } from "../cells/cell.ts";
import type { DefinedName, Sheet } from "./model.ts";
import type { Package } from "./parts/package.ts";
import type { MetadataPart } from "./parts/readMetadata.ts";
import type { StylesPart } from "./parts/readStyles.ts";
import type { Relationship } from "./parts/relationships.ts";

/** An opened workbook: its cells, and every part of the file as it was. */
export interface Workbook {
  readonly files: Package;
  /** The name of the part that lists the sheets. */
  readonly part: string;
  readonly relationships: readonly Relationship[];
  readonly sheets: readonly Sheet[];
  readonly names: readonly DefinedName[];
  readonly dateSystem: 1900 | 1904;
  /** The file asks for a full calculation whenever it is opened. */
  readonly asksForAll: boolean;
  readonly styles: StylesPart | undefined;
  readonly metadata: MetadataPart | undefined;
  /** What the file holds that is not looked into, in words. */
  readonly untouched: readonly string[];
}

/** The content of one cell, counted from 0; null when nothing is there. */
export function cellValue(sheet: Sheet, row: number, column: number): Cell {
  const found = sheet.rows.find((candidate) => candidate.row === row);
  return found?.cells.find((cell) => cell.column === column)?.value ?? null;
}
