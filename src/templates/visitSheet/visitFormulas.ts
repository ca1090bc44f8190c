import { room } from "./visitTables.ts";

/** Where the parts of the sheets stand, counted from 0. */
export const places = {
  fields: 3,
  groups: 15,
  found: 28,
  weighed: 29,
  batch: 26,
  bathAnswers: 20,
  firstPlan: 3,
  /** The longest care plan has 22 lines with its headings, and 3 more where the finding is in doubt. */
  planRows: 26,
} as const;

/** Where the plan for a finding stands on the sheet Plan lines: its heading, counted from 0; the plan follows. */
export const planRow = (place: number): number => places.firstPlan + place * places.planRows;

/** The row under the tables of groups that holds the whole flock, counted from 0. */
export const flockRow = places.groups + room.groups + 1;

/** Blank where one of the cells is blank. */
export const unlessBlank = (cells: readonly string[], formula: string): string =>
  `IF(OR(${cells.map((cell) => `LEN(${cell})=0`).join(",")}),"",${formula})`;

/** A cell that may be left blank, as a blank: not every spreadsheet hands one over as such. */
export const optional = (cell: string): string => `IF(LEN(${cell})=0,"",${cell})`;
