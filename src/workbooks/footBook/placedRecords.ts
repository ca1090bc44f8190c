import { cases } from "../tables/cases.ts";
import { gathers } from "../tables/gathers.ts";
import { placeGrid } from "../writing/placeGrid.ts";
import { placeTable } from "../writing/placeTable.ts";
import { headingRow, sheetNames } from "./bookSheets.ts";

/** Where the records stand. */
export const placedGathers = placeTable(sheetNames.gathers, gathers, { row: headingRow, column: 0 });
export const placedCases = placeTable(sheetNames.cases, cases, { row: headingRow, column: 0 });

/** What is worked out beside the table Cases. It cannot be part of the table, where no list may spill. */
const caseAnswers = ["clear", "lookAgain", "secondLook", "caseNumber"] as const;

export const besideCases = placeGrid(
  sheetNames.cases,
  caseAnswers,
  { row: headingRow, column: cases.keys.length },
  cases.room,
);
