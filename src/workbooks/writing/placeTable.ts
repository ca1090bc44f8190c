import type { Cell } from "../../cells/cell.ts";
import type { Area, Place } from "../../workbook/address.ts";
import { cellsOf, type Table } from "../tables/defineTable.ts";
import { cellsOn, rowCell } from "./references.ts";
import type { SheetAuthor } from "./sheetAuthor.ts";
import { writeHeadings } from "./writeHeadings.ts";

/** Where a table stands on its sheet. */
export interface PlacedTable<K extends string> {
  /** Headings and all. */
  readonly area: Area;
  /** The records, the free ones too. */
  readonly rows: Area;
  /** The records of a column, or of the columns from one to another. */
  readonly column: (key: K, to?: K) => Area;
  /** A cell of the first record, with a row that moves. */
  readonly cell: (key: K) => string;
  /** The cell above it. */
  readonly above: (key: K) => string;
  /** A column as formulas of every sheet name it. */
  readonly range: (key: K) => string;
}

/** @param at - of the first heading */
export function placeTable<K extends string>(
  sheet: string,
  table: Table<K>,
  at: Place,
  room = table.room,
): PlacedTable<K> {
  const area = { top: at.row, left: at.column, bottom: at.row + room, right: at.column + table.keys.length - 1 };
  const rows = { ...area, top: area.top + 1 };
  const columnOf = (key: K): number => at.column + table.placeOf(key);
  const column = (key: K, to = key): Area => ({ ...rows, left: columnOf(key), right: columnOf(to) });
  return {
    area,
    rows,
    column,
    cell: (key) => rowCell({ row: rows.top, column: columnOf(key) }),
    above: (key) => rowCell({ row: area.top, column: columnOf(key) }),
    range: (key) => cellsOn(sheet, column(key)),
  };
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
  const columns = table.keys.map((key) => table.columns[key]);
  writeHeadings(
    sheet,
    { row: area.top, column: area.left },
    table.headings,
    columns.map(({ look }) => look),
  );
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
