import { columnLetters } from "../../workbook/address.ts";
import { quoteSheet } from "../../workbook/formula/structured.ts";
import type { FlockYear } from "./comparisonContent.ts";

/** The sheets, in the order of the work. */
export const sheetNames = {
  start: "Start",
  flocks: "Flocks",
  comparison: "Comparison",
  pictures: "Pictures",
  one: "One flock",
  books: "Books",
  figures: "Figures",
} as const;

/** Headings of the table Flocks, in their order, with the part of a record that stands under each. */
export const flockColumns = {
  Flock: "flock",
  "Looked at": "lookedAt",
  Lame: "lame",
  "Looked at, year before": "lookedAtBefore",
  "Lame, year before": "lameBefore",
  Cases: "cases",
  "Antibiotics, mg": "antibioticMg",
  "Breeding sheep": "breedingSheep",
  "Lambs sold": "slaughterLambs",
  "Own target": "target",
  Note: "note",
} as const satisfies Readonly<Record<string, keyof FlockYear>>;

export const flockHeadings = Object.keys(flockColumns) as readonly (keyof typeof flockColumns)[];

/** The row of the headings of Flocks and of Comparison, counted from 0; the flocks follow, a row each, in both. */
export const headingRow = 8;
export const firstFlock = headingRow + 1;

/** How many flocks there is room for: those there are and some more, in tens. */
export const roomFor = (flocks: number): number => Math.max(40, Math.ceil((flocks + 5) / 10) * 10);

/** A column of cells on a sheet, as a formula names it. */
export function columnOf(sheet: string, column: number, top: number, rows: number): string {
  const letters = columnLetters(column);
  return `${quoteSheet(sheet)}$${letters}$${top + 1}:$${letters}$${top + rows}`;
}
