import { day } from "../../src/reading/days.ts";
import { column, leavingOut } from "../../src/reading/parameter.ts";
import { countedColumns } from "../counting/gatherColumns.ts";
import { leftOutNote } from "../leftOutNote.ts";

/** The gathers with their days, for every function that follows them over time. */
export const datedGatherColumns = { dates: leavingOut(column(day, "Day of each gather")), ...countedColumns };

/** The rules for dated gathers, said under every function that reads them. */
export const datedGatherNotes = [
  "The dates may be in any order; the answer is in order of time. Rows of one day are one gather.",
  "Rows that are blank in every column are left out. A gather of which no sheep were looked at has no share.",
  leftOutNote,
];
