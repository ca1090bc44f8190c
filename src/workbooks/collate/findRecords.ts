import { type Cell, isBlankCell } from "../../cells/cell.ts";
import type { UnreadSheet, UnreadWorkbook } from "../../workbook/lookInto.ts";
import type { SheetRow } from "../../workbook/model.ts";
import type { Table } from "../tables/defineTable.ts";

/** Records under their headings, wherever in the workbook they stand. */
export interface FoundRecords {
  readonly sheet: string;
  readonly headings: readonly string[];
  readonly rows: readonly { readonly sheetRow: number; readonly cells: readonly Cell[] }[];
  /** Filled rows under the end of the table, which no formula of the book counts. */
  readonly below: number;
}

/** Headings are compared without capitals and spaces, since those are changed by the way. */
const plainHeading = (heading: string): string => heading.trim().replace(/\s+/g, " ").toLowerCase();

/** Rows at the top of a sheet among which a heading row is looked for where there is no table. */
const searched = 60;

/**
 * Finds records by their headings: first among the tables, then in the first rows of every sheet, since some programs
 * save a table as plain cells.
 *
 * @param needed - columns that must all be there
 */
export function findRecords<K extends string>(
  workbook: UnreadWorkbook,
  { columns: known }: Table<K>,
  needed: readonly K[],
): FoundRecords | undefined {
  const wanted = needed.map((key) => plainHeading(known[key].heading));
  const holds = (headings: readonly string[]): boolean => {
    const there = new Set(headings.map(plainHeading));
    return wanted.every((heading) => there.has(heading));
  };
  for (const sheet of workbook.sheets) {
    const table = sheet.tables.find(({ columns }) => holds(columns));
    if (!table) continue;
    const { top, left, bottom, right } = table.area;
    const first = top + table.headerRows;
    return recordsAt(sheet, table.columns, { left, right, first, last: bottom - table.totalsRows, end: bottom });
  }
  return withoutTable(workbook, holds);
}

function withoutTable(workbook: UnreadWorkbook, holds: (headings: readonly string[]) => boolean) {
  for (const sheet of workbook.sheets) {
    const heading = sheet.rows().find((row) => row.row < searched && holds(textsOf(row)));
    if (!heading) continue;
    const filled = heading.cells.filter(({ value }) => typeof value === "string" && value.trim() !== "");
    const left = filled[0]?.column ?? 0;
    const right = filled.at(-1)?.column ?? left;
    const headings = cellsOf(heading, left, right).map((cell) => (typeof cell === "string" ? cell : ""));
    const last = Number.MAX_SAFE_INTEGER;
    return recordsAt(sheet, headings, { left, right, first: heading.row + 1, last, end: last });
  }
  return undefined;
}

interface Bounds {
  readonly left: number;
  readonly right: number;
  readonly first: number;
  readonly last: number;
  /** The last row of the table, totals and all. */
  readonly end: number;
}

function recordsAt(
  sheet: UnreadSheet,
  headings: readonly string[],
  { left, right, first, last, end }: Bounds,
): FoundRecords {
  const rows: { sheetRow: number; cells: readonly Cell[] }[] = [];
  let below = 0;
  for (const row of sheet.rows()) {
    if (row.row < first) continue;
    const cells = cellsOf(row, left, right);
    if (cells.every(isBlankCell)) continue;
    if (row.row <= last) rows.push({ sheetRow: row.row + 1, cells });
    else if (row.row > end) below++;
  }
  return { sheet: sheet.name, headings, rows: rows.sort((one, other) => one.sheetRow - other.sheetRow), below };
}

const textsOf = ({ cells }: SheetRow): readonly string[] =>
  cells.flatMap(({ value }) => (typeof value === "string" ? [value] : []));

function cellsOf({ cells }: SheetRow, left: number, right: number): readonly Cell[] {
  const found: Cell[] = new Array(right - left + 1).fill(null);
  for (const { column, value } of cells) if (column >= left && column <= right) found[column - left] = value;
  return found;
}

/** A record's cell by the key of its column; null where the column is not there. */
export function cellUnder<K extends string>(
  { columns }: Table<K>,
  headings: readonly string[],
): (cells: readonly Cell[], key: K) => Cell {
  const places = new Map<string, number>();
  headings.forEach((heading, index) => {
    if (!places.has(plainHeading(heading))) places.set(plainHeading(heading), index);
  });
  // Asked for the same few columns in every row.
  const known = new Map<K, number>();
  return (cells, key) => {
    let place = known.get(key);
    if (place === undefined) {
      place = places.get(plainHeading(columns[key].heading)) ?? -1;
      known.set(key, place);
    }
    return cells[place] ?? null;
  };
}
