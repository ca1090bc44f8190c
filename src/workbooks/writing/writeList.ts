import type { AnyFunction } from "../../definition/defineFunction.ts";
import { columnLetters } from "../../workbook/address.ts";
import type { Format } from "../../writing/format.ts";
import { cutOff } from "./cutOff.ts";
import type { Look } from "./looks.ts";
import type { SheetAuthor } from "./sheetAuthor.ts";

/** A list that a function spills: where its headings stand, counted from 0, and what it is asked. */
export interface ListPlan {
  readonly question: string;
  readonly row: number;
  readonly column: number;
  /** Without `=`; calls `gives`. */
  readonly formula: string;
  readonly gives: AnyFunction;
  /** Rows in which lines are drawn; the list itself may go on below. */
  readonly rows: number;
  /** The most lines it can have; two rows above its headings it is then said when a spreadsheet cuts it off. */
  readonly longest?: number;
  /** What gives as many lines as the formula, where that is worked out faster. */
  readonly counted?: string;
  /** Which rows stand out, as a formula for the first row under the headings. */
  readonly strong?: string;
}

const looks: Partial<Record<Format, Look>> = {
  date: "workedDate",
  share: "workedPercent",
  count: "workedCount",
  days: "workedCount",
  ml: "workedMl",
  rate: "workedRate",
  number: "workedNumber",
};

/** Writes a list under its question: the headings come with it, and its columns are dressed for what they hold. */
export function writeList(
  sheet: SheetAuthor,
  { question, row, column, formula, gives, rows, longest, counted = formula, strong }: ListPlan,
): void {
  const { formats } = gives.result;
  const right = column + formats.length - 1;
  sheet.put({ row: row - 1, column }, question, "question");
  formats.forEach((format, step) => {
    const place = { row, column: column + step };
    sheet.put(place, null, looks[format] && format !== "date" ? "workedHeadingCentre" : "workedHeading");
  });
  sheet.put({ row, column }, { formula });
  const letters = columnLetters(column);
  if (longest !== undefined) {
    const cells = `$${letters}$${row + 1}:$${letters}$${row + 1 + longest}`;
    sheet.put({ row: row - 2, column }, { formula: cutOff(counted, cells) }, "careHeading");
  }
  sheet.emphasize(
    { top: row + 1, left: column, bottom: row + rows, right },
    ...(strong === undefined ? [] : [[strong, "strong"] as const]),
    [`$${letters}${row + 2}<>""`, "line"],
  );
}

/** How each column of a list looks, for `columnLook`. */
export const listLooks = ({ result }: AnyFunction): readonly Look[] =>
  result.formats.map((format: Format) => looks[format] ?? "worked");
