import { confidence, count } from "../../src/reading/numbers.ts";
import { column, leavingOut, oneOr } from "../../src/reading/parameter.ts";

/** The counts of one or many gathers, for every function that reads them. */
export const gatherColumns = {
  lame: column(count("lame sheep"), "Lame sheep at each gather (a cell or a column)"),
  seen: column(count("sheep looked at"), "Sheep looked at, the same rows"),
};

/** The same for functions that leave out a row that cannot be used, and say so. */
export const countedColumns = { lame: leavingOut(gatherColumns.lame), seen: leavingOut(gatherColumns.seen) };

/** How sure a range is to be. */
export const confidenceChoice = oneOr(confidence, 0.95, "How sure the range is to be: 0.95 is 95 in 100");

/** The rules for counts, said under every function that reads them. */
export const gatherNotes = [
  "Rows are pooled: all lame sheep over all sheep looked at, so a large gather weighs more than a small one.",
  "Rows that are blank in every column are left out. A row with a count missing is refused, since a blank is never a sound sheep.",
];
