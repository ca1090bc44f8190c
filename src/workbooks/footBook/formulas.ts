import { columnLetters } from "../../workbook/address.ts";
import { quoteSheet } from "../../workbook/formula/structured.ts";
import { orWords } from "../writing/orWords.ts";
import { caseHeadings, firstRecord, room, sheetNames } from "./bookTables.ts";

/** A formula that fails for what is in the records; the sheet Problems names the record to mend. */
export const orSeeProblems = (formula: string): string => orWords(formula, "not worked out: see Problems");

/** The worked-out columns beside the table Cases, in their order. */
export const caseWorked = ["clear", "lookAgain", "secondLook", "caseNumber"] as const;

/** The letters of a column that is worked out beside the table Cases. */
export const workedLetters = (name: (typeof caseWorked)[number]): string =>
  columnLetters(caseHeadings.length + caseWorked.indexOf(name));

/**
 * A worked-out column beside the table Cases, as far down as the table has room. It cannot be part of the table, where
 * no list may spill.
 */
export function workedColumn(name: (typeof caseWorked)[number]): string {
  const letters = workedLetters(name);
  return `${quoteSheet(sheetNames.cases)}$${letters}$${firstRecord + 1}:$${letters}$${firstRecord + room.cases}`;
}

/** In each row the first of these columns that is filled there. A blank would come out of the last as 0. */
function firstFilled(...[first = '""', ...others]: readonly string[]): string {
  return `IF(${first}="",${others.length === 0 ? '""' : firstFilled(...others)},${first})`;
}

/** The day a case was seen lame, or that of its treatment where nobody wrote down the other. */
export const lameOn = firstFilled("Cases[Seen lame]", "Cases[Treated]");

/** The day of the second look. Whoever found her sound has looked at her again, and nobody looks at one that has left. */
export const lookedOn = firstFilled("Cases[Looked again]", "Cases[Sound on]", "Cases[Left flock]");

/** A column of Cases, blank where the case was seen before the year looked at. A date kept as text stays in. */
export const inSeason = (column: string): string =>
  `IF(${column}="","",IF(ISNUMBER(${lameOn})*(${lameOn}<year_from),"",${column}))`;

/**
 * A column, blank where its date, or that of its row, lies after the day the book is worked out for, so that one can
 * look back.
 */
export const untilAsOf = (column: string, date = column): string =>
  `IF(${column}="","",IF(ISNUMBER(${date})*(${date}>as_of),"",${column}))`;

/** What the settings say of each case's medicine, by the column of the table there; an empty text where nothing. */
export const ofMedicine = (column: number): string =>
  `IFERROR(VLOOKUP(Cases[Medicine],Medicines[#Data],${column},FALSE),"")`;
