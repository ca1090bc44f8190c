import { day } from "../../src/reading/days.ts";
import { wholeDays } from "../../src/reading/numbers.ts";
import { doubtColumn, oneOr } from "../../src/reading/parameter.ts";
import { tag } from "../../src/reading/words.ts";

/** The records that are gathered into cases, for every function that counts cases. */
export const recordColumns = {
  tags: doubtColumn(tag, "Tags in the records"),
  dates: doubtColumn(day, "Day of each record, the same rows"),
};

export const gapDays = oneOr(wholeDays, 14, "Most days between two records of one case");

/** What a case is, said under every function that counts them. */
export const caseNotes = [
  "A record within gap_days of the animal's previous record belongs to the same case. It is the previous record that counts, not the first: with 14 days, records on days 0, 10 and 20 are one case.",
  "Records need no order. Tags compare as TAGKEY does, so two spellings of a tag are one animal.",
];

/** Said where cases are given out one animal at a time, without a look at tags that may be the same. */
export const alikeNote =
  "A tag that is only alike, such as O42 beside 042, is another animal here: let TAGCHECK look through the tags first.";
