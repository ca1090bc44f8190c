import type { Cell } from "../../cells/cell.ts";
import type { Place } from "../../workbook/address.ts";
import { cellsOf, type Table } from "../tables/defineTable.ts";
import { isCentred } from "./looks.ts";
import { type PlacedGrid, placeGrid } from "./placeGrid.ts";
import { rowCell } from "./references.ts";
import type { SheetAuthor } from "./sheetAuthor.ts";

/** Where a table stands on its sheet: its rows are the records, the free ones too. */
export interface PlacedTable<K extends string> extends PlacedGrid<K> {
  /** The cell above that of the first record, with a row that moves. */
  readonly above: (key: K) => string;
}

/** @param at - of the first heading */
export function placeTable<K extends string>(
  sheet: string,
  table: Table<K>,
  at: Place,
  room = table.room,
): PlacedTable<K> {
  const grid = placeGrid(sheet, table.keys, at, room);
  return { ...grid, above: (key) => rowCell({ row: at.row, column: grid.column(key).left }) };
}

interface Writing {
  /** Whether each cell of the room is dressed; else whole columns are, see `columnLook`. */
  readonly dressed?: boolean;
  /** Whether the table says how wide the columns of the sheet are. */
  readonly widths?: boolean;
  readonly striped?: boolean;
}

/** Writes a table that is typed: headings, what stands in it, and what may be typed. */
export function writeTable<K extends string>(
  sheet: SheetAuthor,
  table: Table<K>,
  placed: PlacedTable<K>,
  records: readonly Readonly<Partial<Record<K, Cell | undefined>>>[],
  { dressed = true, widths = false, striped = false }: Writing = {},
): void {
  const { area, rows } = placed;
  table.keys.forEach((key, step) => {
    const { heading, look } = table.columns[key];
    sheet.put({ row: area.top, column: area.left + step }, heading, isCentred(look) ? "headingCentre" : "heading");
  });
  table.keys.forEach((key, step) => {
    const { look, rule, width } = table.columns[key];
    if (widths) sheet.width(area.left + step, width);
    if (dressed) sheet.dress(placed.column(key), look);
    if (rule) sheet.accept(placed.column(key), typeof rule === "function" ? rule(placed.cell) : rule);
  });
  records.forEach((record, step) => {
    sheet.putRow({ row: rows.top + step, column: area.left }, cellsOf(table, record));
  });
  sheet.table(table.name, area, striped);
}
