import { countings } from "../../src/core/withdrawal/clearDate.ts";
import { moment } from "../../src/reading/days.ts";
import { wholeDays } from "../../src/reading/numbers.ts";
import { gappedColumn, oneOr } from "../../src/reading/parameter.ts";
import { choice, tag } from "../../src/reading/words.ts";

/** The three columns of a treatment record, for every function that looks up an animal in it. */
export const treatmentColumns = {
  tags: gappedColumn(tag, "Tags in the treatment records"),
  treated: gappedColumn(moment, "Date of each treatment's last dose, the same rows"),
  withdrawal_days: gappedColumn(wholeDays, "Withdrawal days of each treatment (for meat, or for milk), the same rows"),
};

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
  "Tags compare as TAGKEY does, so two spellings of a tag are one animal.",
];
