import { columnLetters } from "../../src/workbook/address.ts";
import type { Table } from "../../src/workbooks/tables/defineTable.ts";

/** The letters of a column of a table that begins in column A: tests that open a book know columns by name too. */
export const columnOf = <K extends string>(table: Table<K>, key: NoInfer<K>): string =>
  columnLetters(table.placeOf(key));
