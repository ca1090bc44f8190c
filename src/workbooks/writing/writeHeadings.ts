import type { Place } from "../../workbook/address.ts";
import { isCentred, type Look } from "./looks.ts";
import type { SheetAuthor } from "./sheetAuthor.ts";

/** Writes the headings of a table that is typed; over numbers that stand in the middle they stand there too. */
export function writeHeadings(
  sheet: SheetAuthor,
  { row, column }: Place,
  headings: readonly string[],
  columnLooks: readonly Look[],
): void {
  headings.forEach((heading, step) => {
    const look = columnLooks[step];
    sheet.put({ row, column: column + step }, heading, look && isCentred(look) ? "headingCentre" : "heading");
  });
}
