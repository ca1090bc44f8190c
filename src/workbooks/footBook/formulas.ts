import { cases } from "../tables/cases.ts";
import type { KeyOf } from "../tables/defineTable.ts";
import { medicines } from "../tables/settingsTables.ts";
import { orWords } from "../writing/orWords.ts";

/** A formula that fails for what is in the records; the sheet Problems names the record to mend. */
export const orSeeProblems = (formula: string): string => orWords(formula, "not worked out: see Problems");

/** In each row the first of these columns that is filled there. A blank would come out of the last as 0. */
function firstFilled(...[first = '""', ...others]: readonly string[]): string {
  return `IF(${first}="",${others.length === 0 ? '""' : firstFilled(...others)},${first})`;
}

/** The day a case was seen lame, or that of its treatment where nobody wrote down the other. */
export const lameOn = firstFilled(cases.of("seen"), cases.of("treated"));

/** The day of the second look. Whoever found her sound has looked at her again, and nobody looks at one that has left. */
export const lookedOn = firstFilled(cases.of("lookedAgain"), cases.of("soundOn"), cases.of("leftFlock"));

/** A column of Cases, blank where the case was seen before the year looked at. A date kept as text stays in. */
export const inSeason = (column: string): string =>
  `IF(${column}="","",IF(ISNUMBER(${lameOn})*(${lameOn}<year_from),"",${column}))`;

/**
 * A column, blank where its date, or that of its row, lies after the day the book is worked out for, so that one can
 * look back.
 */
export const untilAsOf = (column: string, date = column): string =>
  `IF(${column}="","",IF(ISNUMBER(${date})*(${date}>as_of),"",${column}))`;

/** What the settings say of each case's medicine; an empty text where nothing. */
export const ofMedicine = (key: KeyOf<typeof medicines>): string =>
  `IFERROR(VLOOKUP(${cases.of("medicine")},Medicines[#Data],${medicines.placeOf(key) + 1},FALSE),"")`;
