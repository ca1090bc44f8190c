import { type Area, columnLetters } from "../../workbook/address.ts";
import { quoteSheet } from "../../workbook/formula/structured.ts";
import { caseHeadings, gatherHeadings, type TypedRow } from "../inventedFlock/asTyped.ts";

/** Headings stand in the fourth row of both record sheets; the records follow. Counted from 0. */
export const headingRow = 3;
export const firstRecord = headingRow + 1;

export const sheetNames = {
  start: "Start",
  settings: "Settings",
  gathers: "Gathers",
  cases: "Cases",
  answers: "Answers",
  lists: "Lists",
  check: "Record check",
} as const;

/** The typed part of a record sheet, headings and all. */
export const recordArea = (headings: readonly string[], rows: readonly TypedRow[]): Area => ({
  top: headingRow,
  left: 0,
  bottom: headingRow + rows.length,
  right: headings.length - 1,
});

/** The worked-out columns right of the case records. */
export const caseWorked = ["clear", "lookAgain", "lookState", "lesion"] as const;

/** The worked-out columns right of the gathers, after one column with the share. */
const gatherWorked = ["share", "latestGroup", "latestLame", "latestSeen"] as const;

/** Worked-out columns as formulas name them, for as many records as there are. */
export interface WorkedRanges {
  readonly cases: Readonly<Record<(typeof caseWorked)[number], string>>;
  readonly gathers: Readonly<Record<(typeof gatherWorked)[number], string>>;
}

export function workedRanges(gathers: readonly TypedRow[], cases: readonly TypedRow[]): WorkedRanges {
  return {
    cases: rangesBeside(sheetNames.cases, caseHeadings, caseWorked, cases.length),
    gathers: rangesBeside(sheetNames.gathers, gatherHeadings, gatherWorked, gathers.length),
  };
}

function rangesBeside<K extends string>(
  sheet: string,
  headings: readonly string[],
  worked: readonly K[],
  records: number,
): Readonly<Record<K, string>> {
  const range = (place: number) => {
    const letters = columnLetters(headings.length + place);
    return `${quoteSheet(sheet)}$${letters}$${firstRecord + 1}:$${letters}$${firstRecord + records}`;
  };
  return Object.fromEntries(worked.map((name, place) => [name, range(place)])) as Record<K, string>;
}
