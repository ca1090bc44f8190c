import { spreadWords } from "../../src/core/counting/countedLooks.ts";
import { day } from "../../src/reading/days.ts";
import { confidence, count } from "../../src/reading/numbers.ts";
import { column, gappedColumnOrNone, leavingOut, oneOr, oneOrNone } from "../../src/reading/parameter.ts";
import { choice } from "../../src/reading/words.ts";

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

/** Given last: what a range over several gathers allows for. */
export const spreadColumns = {
  spread: oneOrNone(
    choice(...spreadWords),
    "What the range allows for: gathers (they differ beyond chance; used when left out) or chance",
  ),
  dates: gappedColumnOrNone(day, "Day of each row, where a gather has several rows; the same rows"),
};

/** The rules for several gathers, said under every function whose range allows for their spread. */
export const spreadNotes = [
  "Several rows are several gathers, and gathers of one flock differ by more than chance. So the range is that of the long-run share, and widens with the spread between the rows; where there are few of them, a spread that is usual is supposed as well. One row tells of itself only.",
  'Give dates where one gather has several rows (its groups): rows of one day are then one gather. spread "chance" takes all rows as one look, and its range is far too narrow for the long run.',
];
