import type { Cell } from "../../cells/cell.ts";
import { openWorkbook } from "../../workbook/openWorkbook.ts";
import { placeNamed } from "../../workbook/placeNamed.ts";
import { type Edit, writeEdits } from "../../workbook/saving/writeEdits.ts";
import type { Workbook } from "../../workbook/workbook.ts";
import type { BookContent } from "../footBook/bookContent.ts";
import { cases } from "../tables/cases.ts";
import type { RecordOf, Table } from "../tables/defineTable.ts";
import { gathers } from "../tables/gathers.ts";
import { saleList } from "../tables/saleList.ts";
import { groups, medicines, people, treatments } from "../tables/settingsTables.ts";
import { columnsOfTable } from "./columnsOfTable.ts";

/**
 * Types records and settings into an empty Flock foot book, for where no workbook can be written anew: in a browser.
 *
 * @param empty - the file of an empty book
 * @returns the file of the filled book; its formulas are not worked out anew
 * @throws Error when the file is no foot book, or has less room than the content needs
 */
export function fillBook(empty: Uint8Array, content: BookContent): Uint8Array {
  const workbook = openWorkbook(empty);
  const settings: ReadonlyMap<string, Cell | undefined> = new Map<string, Cell | undefined>([
    ...(content.settings ?? []),
    ["farm_name", content.farm],
    ["as_of", content.asOf],
    ["target", content.target],
    ["lame_from", content.lameFrom],
    ["breeding_sheep", content.breedingSheep],
    ["slaughter_lambs", content.slaughterLambs],
    ["sale_date", content.saleDate],
    ["event_date", content.eventDate],
  ]);
  const own = content.treatments ?? [];
  return writeEdits(workbook, [
    ...[...settings].flatMap(([name, value]) => (value === undefined ? [] : [{ ...placeOf(workbook, name), value }])),
    ...typedInto(workbook, groups, content.groups),
    ...typedInto(workbook, medicines, content.medicines),
    ...typedInto(
      workbook,
      people,
      content.givenBy.map((givenBy) => ({ givenBy })),
    ),
    // The usual treatments give their place to a farm's own, all of them.
    ...(own.length === 0
      ? []
      : typedInto(
          workbook,
          treatments,
          Array.from({ length: treatments.room }, (_, index) => ({ treatment: own[index] ?? null })),
        )),
    ...typedInto(workbook, gathers, content.gathers),
    ...typedInto(workbook, cases, content.cases),
    ...typedInto(
      workbook,
      saleList,
      content.saleTags.map((tag) => ({ tag })),
    ),
  ]);
}

function placeOf(workbook: Workbook, name: string): Pick<Edit, "sheet" | "row" | "column"> {
  const place = placeNamed(workbook, name);
  if (!place) throw new Error(`the book has no cell named ${name}`);
  return place;
}

function typedInto<K extends string>(
  { sheets }: Workbook,
  table: Table<K>,
  records: readonly RecordOf<Table<K>>[],
): readonly Edit[] {
  const sheet = sheets.findIndex(({ tables }) => tables.some(({ name }) => name === table.name));
  const found = sheets[sheet]?.tables.find(({ name }) => name === table.name);
  if (!found) throw new Error(`the book has no table ${table.name}`);
  const top = found.area.top + found.headerRows;
  if (records.length > found.area.bottom - top + 1)
    throw new Error(`${table.name} has no room for ${records.length} rows`);
  const columns = columnsOfTable(table, found).map(([key, column]) => {
    if (column === undefined) throw new Error(`${table.name} has no column ${table.columns[key].heading}`);
    return [key, column] as const;
  });
  return records.flatMap((record, index) =>
    columns.flatMap(([key, column]) => {
      const value = record[key];
      return value === undefined ? [] : [{ sheet, row: top + index, column, value }];
    }),
  );
}
