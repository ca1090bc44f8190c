import { type Cell, isBlankCell } from "../../cells/cell.ts";
import { cellNamed } from "../../workbook/cellNamed.ts";
import type { UnreadWorkbook } from "../../workbook/lookInto.ts";
import type { RecordOf, Table } from "../tables/defineTable.ts";
import { saleList } from "../tables/saleList.ts";
import { groups, medicines, people, treatments } from "../tables/settingsTables.ts";
import { columnsOfTable } from "./columnsOfTable.ts";

/** What a foot book holds beside its records. */
export interface BookSettings {
  /** What was typed into the cells of the settings, by their names; formulas are left to the new book. */
  readonly typed: ReadonlyMap<string, Cell>;
  readonly groups: readonly RecordOf<typeof groups>[];
  readonly medicines: readonly RecordOf<typeof medicines>[];
  readonly people: readonly RecordOf<typeof people>[];
  readonly treatments: readonly RecordOf<typeof treatments>[];
  readonly saleTags: readonly RecordOf<typeof saleList>[];
}

/** The settings that a new book takes over as they are. The days a book is worked out for follow the calendar. */
export const carriedNames = [
  "farm_name",
  "target",
  "lame_from",
  "recheck_days",
  "ahead_days",
  "gap_days",
  "repeat_from",
  "settle_days",
  "breeding_sheep",
  "slaughter_lambs",
] as const;
const datedNames = ["as_of", "year_from", "sale_date", "event_date", "book_version"] as const;

/** The settings of a foot book of any version; undefined where the workbook is none. */
export function settingsOf(workbook: UnreadWorkbook): BookSettings | undefined {
  const named = new Set(workbook.names.map(({ name }) => name.toLowerCase()));
  if (!["farm_name", "gap_days", "settle_days"].every((name) => named.has(name))) return undefined;
  const typed = new Map<string, Cell>();
  for (const name of [...carriedNames, ...datedNames]) {
    const cell = cellNamed(workbook, name);
    const day =
      cell && datedNames.includes(name as "as_of") && typeof cell.value === "number" && name !== "book_version";
    if (cell && !cell.formula && !isBlankCell(cell.value))
      typed.set(name, day ? (cell.value as number) + workbook.dayOffset : cell.value);
  }
  return {
    typed,
    groups: recordsOf(workbook, groups),
    medicines: recordsOf(workbook, medicines),
    people: recordsOf(workbook, people),
    treatments: recordsOf(workbook, treatments),
    saleTags: recordsOf(workbook, saleList),
  };
}

/** What stands in a table of this name. */
function recordsOf<K extends string>({ sheets }: UnreadWorkbook, table: Table<K>): readonly Partial<Record<K, Cell>>[] {
  for (const sheet of sheets) {
    const found = sheet.tables.find(({ name }) => name.toLowerCase() === table.name.toLowerCase());
    if (!found) continue;
    const places = columnsOfTable(table, found);
    const rows = sheet
      .rows()
      .filter(({ row }) => row >= found.area.top + found.headerRows && row <= found.area.bottom - found.totalsRows);
    return rows.flatMap(({ cells }) => {
      const filled = places.flatMap(([key, column]) => {
        const value = cells.find((cell) => cell.column === column)?.value;
        return value === undefined || isBlankCell(value) || typeof value === "object" ? [] : [[key, value] as const];
      });
      return filled.length === 0 ? [] : [Object.fromEntries(filled) as Partial<Record<K, Cell>>];
    });
  }
  return [];
}
