import type { Area } from "../../workbook/address.ts";
import type { Look } from "../writing/looks.ts";
import type { SheetAuthor } from "../writing/sheetAuthor.ts";
import { writeHeadings } from "../writing/writeHeadings.ts";
import type { TypedRow } from "./bookContent.ts";
import { firstRecord, headingRow } from "./bookTables.ts";

interface RecordTable {
  readonly name: string;
  readonly headings: readonly string[];
  readonly looks: readonly Look[];
  readonly records: readonly TypedRow[];
  /** How many records there is room for. */
  readonly room: number;
}

/**
 * Writes a table of records that is typed and goes on growing.
 *
 * @returns the cells under its headings, the free ones too
 */
export function writeRecords(sheet: SheetAuthor, { name, headings, looks, records, room }: RecordTable): Area {
  sheet.rowHeight(headingRow, 34);
  writeHeadings(sheet, { row: headingRow, column: 0 }, headings, looks);
  records.forEach((row, place) => {
    sheet.putRow({ row: firstRecord + place, column: 0 }, row);
  });
  const area = { top: headingRow, left: 0, bottom: headingRow + room, right: headings.length - 1 };
  sheet.table(name, area, false);
  return { ...area, top: firstRecord };
}
