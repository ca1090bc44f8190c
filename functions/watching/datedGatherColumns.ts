import { day } from "../../src/reading/days.ts";
import { column } from "../../src/reading/parameter.ts";
import { gatherColumns } from "../counting/gatherColumns.ts";

/** The gathers with their days, for every function that follows them over time. */
export const datedGatherColumns = { dates: column(day, "Day of each gather"), ...gatherColumns };

/** The rules for dated gathers, said under every function that reads them. */
export const datedGatherNotes = [
  "The dates may be in any order; the answer is in order of time. Rows of one day are one gather.",
  "Rows that are blank in every column are left out. A gather of which no sheep were looked at is refused.",
];
