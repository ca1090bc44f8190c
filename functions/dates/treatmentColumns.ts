import { countings } from "../../src/core/dates/clearDate.ts";
import { moment } from "../../src/reading/days.ts";
import { wholeDays } from "../../src/reading/numbers.ts";
import { gappedDoubtColumn, gappedDoubtColumnOrNone, oneOr } from "../../src/reading/parameter.ts";
import { choice, nameText, tag } from "../../src/reading/words.ts";

/** The three columns of a treatment record, for every function that looks up an animal in it. */
export const treatmentColumns = {
  tags: gappedDoubtColumn(tag, "Tags in the treatment records"),
  treated: gappedDoubtColumn(moment, "Date of each treatment's last dose, the same rows"),
  withdrawal_days: gappedDoubtColumn(
    wholeDays,
    "Withdrawal days of each treatment (for meat, or for milk), the same rows",
  ),
};

/** Given last: most treatments are of one animal. */
export const groupColumn = gappedDoubtColumnOrNone(
  nameText("the name of a group"),
  "The group treated, such as Lambs, in rows where a whole group was treated and the tag is blank; the same rows",
);

/** How treatments of a whole group are read. */
export const groupNotes = [
  "A treatment of a whole group has its name in groups and no tag. It holds every animal of that group, and every animal whose group is not known, until its own period is over. One letter more or less is the same group, and so is a name that says more: Lambs and Store lambs. Both at once make another group (Lamb and Store lambs), so write a group in one way. All, whole flock, unknown and a question mark may be any group. Any other name is another group: where a group was renamed, or animals were moved since, leave their group blank.",
];

/** How the withdrawal days are counted. */
export const countingChoice = oneOr(
  choice(...countings),
  "whole days",
  '"whole days", or "from the hour" when the dates hold the time',
);

/** Said wherever a blank must not pass for a period of 0 days. */
export const blankDaysNote =
  "Some spreadsheets hand over blank cells as 0, and missing withdrawal days would then count as none. HOSTCHECK tells whether this one does, and how to guard against it.";

/** Said wherever a date could be taken for that of the other produce. */
export const produceNote =
  "Data sheets give one period for meat and another for milk. The answer is for the produce whose days you give.";

/** The rule for incomplete records, said under every function that reads them. */
export const treatmentNotes = [
  produceNote,
  "A row with a treatment date and no withdrawal days is never read as 0 days. A row with neither is no treatment.",
  blankDaysNote,
  "A treatment whose date or days cannot be read, or are missing, makes the date of its animal not known, and of no other animal but one whose tag may be the same. One without a readable tag may be any animal's, until its own period is over; where its date or days are missing too, until it is mended.",
  "Tags compare as TAGKEY does, so two spellings of a tag are one animal. Tags that may be one animal after a slip are held for one another: zeros lost at the front, a letter that looks like a digit (O, I, L, Z, S, G, B), the country left out, the animal's own number alone, words before or behind the tag, a second number beside it (062, now 071), separators left out.",
];
