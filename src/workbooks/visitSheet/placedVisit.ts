import { agreed, found, otherMedicines, visitGroups, weighed } from "../tables/visitTables.ts";
import { placeGrid } from "../writing/placeGrid.ts";
import { placeTable } from "../writing/placeTable.ts";

/** The sheets, in the order of the work. */
export const sheetNames = {
  start: "Start",
  visit: "Visit",
  doses: "Doses",
  plan: "Care plan",
  page: "Page",
  quarantine: "Quarantine",
  planLines: "Plan lines",
} as const;

/** Where the parts of the sheets stand: rows counted from 0. */
const groupsRow = 15;
const foundRow = 28;
/** Of the headings of the other medicines, and of the weights. */
const othersRow = 34;
const weighedRow = othersRow + otherMedicines.room + 3;

export const placedGroups = placeTable(sheetNames.visit, visitGroups, { row: groupsRow, column: 0 });
/** Beside each group, and in one row more for the whole flock. */
export const groupAnswers = placeGrid(
  sheetNames.visit,
  ["toEstimate", "toFind", "share", "low", "high", "against"],
  { row: groupsRow, column: visitGroups.keys.length },
  visitGroups.room + 1,
);
/** The row under the groups that holds the whole flock. */
export const flockRow = placedGroups.area.bottom + 1;

export const placedFound = placeTable(sheetNames.visit, found, { row: foundRow, column: 0 });

/** Answers about the bath and the batch of doses: beside their labels, a value or several. */
export const bathRow = 22;
export const batch = placeGrid(sheetNames.doses, ["total", "bottles", "largest", "clear"], { row: 29, column: 1 }, 1);
export const placedOthers = placeTable(sheetNames.doses, otherMedicines, { row: othersRow, column: 0 });
export const othersAnswers = placeGrid(
  sheetNames.doses,
  ["total", "clear"],
  { row: othersRow, column: otherMedicines.keys.length },
  otherMedicines.room,
);
export const placedWeighed = placeTable(sheetNames.doses, weighed, { row: weighedRow, column: 0 });
export const doseAnswers = placeGrid(
  sheetNames.doses,
  ["dose", "site1", "site2", "site3", "site4"],
  { row: weighedRow, column: weighed.keys.length },
  weighed.room,
);

const pageGroupsRow = 5;
export const pageGroups = placeGrid(
  sheetNames.page,
  ["group", "sheep", "lookedAt", "lame", "share", "range"],
  { row: pageGroupsRow, column: 0 },
  visitGroups.room + 1,
);
export const pageFound = placeGrid(
  sheetNames.page,
  ["lesion", "cases", "steps"],
  { row: pageGroups.area.bottom + 6, column: 0 },
  found.room,
);
export const wordsRow = pageFound.area.bottom + 2;
/** The medicine that is worked out animal by animal, and the others. */
export const pageMedicines = placeGrid(
  sheetNames.page,
  ["medicine", "days", "clear", "how"],
  { row: wordsRow + 4, column: 0 },
  1 + otherMedicines.room,
);
export const placedAgreed = placeTable(sheetNames.page, agreed, { row: pageMedicines.area.bottom + 5, column: 0 });

/** The longest care plan has 22 lines with its headings, and 3 more where the finding is in doubt. */
export const planLines = 26;
const firstPlan = 3;

/** Where the plan for a finding stands on the sheet Plan lines: its heading; the plan follows. */
export const planRow = (index: number): number => firstPlan + index * planLines;
