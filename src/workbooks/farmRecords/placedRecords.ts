import type { KeyOf } from "../tables/defineTable.ts";
import { type PlacedGrid, placeGrid } from "../writing/placeGrid.ts";
import { type PlacedTable, placeTable } from "../writing/placeTable.ts";
import { farmCases, farmGathers } from "./farmTables.ts";

export const sheetNames = {
  start: "Start",
  settings: "Settings",
  gathers: "Gathers",
  cases: "Cases",
  answers: "Answers",
  lists: "Lists",
  check: "Record check",
} as const;

/** Headings stand in the fourth row of both record sheets; the records follow. Counted from 0. */
export const headingRow = 3;
export const firstRecord = headingRow + 1;

const besideCases = ["clear", "lookAgain", "lookState", "lesion"] as const;
const besideGathers = ["share", "latestGroup", "latestLame", "latestSeen"] as const;

/** Where the records stand, and what is worked out beside them. */
export interface PlacedRecords {
  readonly cases: PlacedTable<KeyOf<typeof farmCases>>;
  readonly besideCases: PlacedGrid<(typeof besideCases)[number]>;
  readonly gathers: PlacedTable<KeyOf<typeof farmGathers>>;
  readonly besideGathers: PlacedGrid<(typeof besideGathers)[number]>;
}

/** @param cases - how many records there are, rows left blank and all */
export const placedRecords = ({ cases, gathers }: Readonly<Record<"cases" | "gathers", number>>): PlacedRecords => {
  const at = { row: headingRow, column: 0 };
  const beside = (columns: number) => ({ row: headingRow, column: columns });
  return {
    cases: placeTable(sheetNames.cases, farmCases, at, cases),
    besideCases: placeGrid(sheetNames.cases, besideCases, beside(farmCases.keys.length), cases),
    gathers: placeTable(sheetNames.gathers, farmGathers, at, gathers),
    besideGathers: placeGrid(sheetNames.gathers, besideGathers, beside(farmGathers.keys.length), gathers),
  };
};
