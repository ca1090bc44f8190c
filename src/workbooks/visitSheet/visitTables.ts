import type { Cell } from "../../cells/cell.ts";
import type { Area } from "../../workbook/address.ts";

/** The sheets, in the order of the work. */
export const sheetNames = {
  start: "Start",
  visit: "Visit",
  doses: "Doses",
  plan: "Care plan",
  page: "Page",
  planLines: "Plan lines",
} as const;

/** The headings of each table. */
export const headings = {
  groups: ["Group", "Sheep", "Looked at", "Lame"],
  found: ["Lesion", "Cases", "Severe", "Pus let out"],
  weighed: ["Animal", "Weight kg"],
  actions: ["Agreed", "Who", "By", "Done"],
} as const;

/** How many rows each table has. */
export const room = { groups: 8, found: 6, weighed: 40, actions: 8 } as const;

/** The cells of a table whose headings stand in a row, headings and all. */
export const tableAt = (table: keyof typeof headings, row: number): Area => ({
  top: row,
  left: 0,
  bottom: row + room[table],
  right: headings[table].length - 1,
});

/** A record as cells in the order of the table's headings. */
export const inOrder = (table: keyof typeof headings, record: Readonly<Record<string, Cell>>): readonly Cell[] =>
  headings[table].map((heading) => record[heading] ?? null);
