import type { Table as StoredTable } from "../../workbook/model.ts";
import type { Table } from "../tables/defineTable.ts";
import { plainHeading } from "./matchHeadings.ts";

/** Where each column of a table stands in a workbook, by its heading; undefined where the workbook has none of it. */
export const columnsOfTable = <K extends string>(
  { keys, columns }: Table<K>,
  found: StoredTable,
): readonly (readonly [K, number | undefined])[] =>
  keys.map((key) => {
    const heading = plainHeading(columns[key].heading);
    const index = found.columns.findIndex((known) => plainHeading(known) === heading);
    return [key, index < 0 ? undefined : found.area.left + index] as const;
  });
