import type { Place } from "../../workbook/address.ts";
import { type Look, looks } from "./looks.ts";
import type { SheetAuthor } from "./sheetAuthor.ts";

/** Writes the headings of a table that is typed; over numbers that stand in the middle they stand there too. */
export function writeHeadings(
  sheet: SheetAuthor,
  { row, column }: Place,
  headings: readonly string[],
  columnLooks: readonly Look[],
): void {
  headings.forEach((heading, step) => {
    sheet.put({ row, column: column + step }, heading, isCentred(columnLooks[step]) ? "headingCentre" : "heading");
  });
}

function isCentred(look: Look | undefined): boolean {
  const style = look && looks[look];
  const alignment = style && "Alignment" in style ? style.Alignment : undefined;
  return alignment !== undefined && "Horizontal" in alignment && alignment.Horizontal === "center";
}
