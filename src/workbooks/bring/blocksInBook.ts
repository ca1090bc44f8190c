import { type Cell, isBlankCell, showCell } from "../../cells/cell.ts";
import type { UnreadSheet, UnreadWorkbook } from "../../workbook/lookInto.ts";
import type { SheetCell, SheetRow } from "../../workbook/model.ts";
import { type Matches, matchHeadings } from "./matchHeadings.ts";
import type { BlockRow, RecordBlock } from "./recordBlock.ts";

/** Rows at the top of a sheet among which a heading row is looked for where there is no table. */
export const searched = 60;

export interface Blocks {
  readonly blocks: readonly RecordBlock[];
  /** Sheets in which something stands and no records were found, with what may be their headings. */
  readonly others: readonly { readonly sheet: string; readonly headings: readonly string[] }[];
}

/**
 * The records of a workbook: its tables whose headings are known, and otherwise the rows under the first heading row that
 * is known on each sheet. What was typed below the end of a table belongs to it.
 *
 * @param wanted - the sheets that are looked at
 */
export function blocksInBook(
  { sheets, dayOffset }: UnreadWorkbook,
  file: string,
  matches: Matches,
  wanted: (sheet: UnreadSheet) => boolean,
): Blocks {
  const blocks: RecordBlock[] = [];
  const others: { sheet: string; headings: readonly string[] }[] = [];
  for (const sheet of sheets.filter(wanted)) {
    const found = [...inTables(sheet, matches)];
    if (found.length === 0) found.push(...underHeadings(sheet, matches));
    for (const block of found) blocks.push({ ...block, place: `${file}, ${sheet.name}`, dayOffset });
    if (found.length === 0 && sheet.rows().some(({ cells }) => cells.some(({ value }) => !isBlankCell(value))))
      others.push({ sheet: sheet.name, headings: likelyHeadings(sheet) });
  }
  return { blocks, others };
}

/** What a person would take for headings where none is known: those of the tables, or the first row of several texts. */
function likelyHeadings({ tables, rows }: UnreadSheet): readonly string[] {
  if (tables.length > 0) return tables.flatMap(({ columns }) => columns);
  const texts = rows()
    .filter(({ row }) => row < searched)
    .map(({ cells }) => cells.map(({ value }) => (typeof value === "string" ? value.trim() : "")))
    .map((row) => row.filter((text) => text !== ""));
  return texts.find((row) => row.length > 1) ?? [];
}

type Found = Pick<RecordBlock, "headings" | "rows">;

function* inTables(sheet: UnreadSheet, matches: Matches): Generator<Found> {
  for (const { columns, area, headerRows, totalsRows } of sheet.tables) {
    if (!matchHeadings(columns, matches)) continue;
    const isTotal = (row: number): boolean => row > area.bottom - totalsRows && row <= area.bottom;
    const rows = sheet.rows().filter(({ row }) => row >= area.top + headerRows && !isTotal(row));
    yield { headings: columns, rows: rowsIn(rows, area.left, area.right) };
  }
}

function* underHeadings(sheet: UnreadSheet, matches: Matches): Generator<Found> {
  const rows = sheet.rows();
  for (const row of rows) {
    if (row.row >= searched) return;
    const filled = row.cells.filter(({ value }) => !isBlankCell(value)).map(({ column }) => column);
    const [left, right] = [Math.min(...filled), Math.max(...filled)];
    if (filled.length < 2) continue;
    const headings = cellsOf(row, left, right).map(asHeading);
    if (!matchHeadings(headings, matches)) continue;
    const below = rows.filter((other) => other.row > row.row);
    // A cell beside the last heading is part of its row.
    const widest = below.reduce(
      (most, { cells }) => cells.reduce((one, { column }) => Math.max(one, column), most),
      right,
    );
    const wide = [...headings, ...Array.from({ length: widest - right }, () => "")];
    yield { headings: wide, rows: rowsIn(below, left, widest) };
    return;
  }
}

/** A heading as text; "" for none. */
export const asHeading = (cell: Cell): string =>
  typeof cell === "string" ? cell.trim() : isBlankCell(cell) ? "" : showCell(cell);

const rowsIn = (rows: readonly SheetRow[], left: number, right: number): readonly BlockRow[] =>
  rows
    .map((row) => ({ row: row.row + 1, cells: cellsOf(row, left, right) }))
    .filter(({ cells }) => !cells.every(isBlankCell))
    .sort((one, other) => one.row - other.row);

function cellsOf({ cells }: SheetRow, left: number, right: number): readonly Cell[] {
  const found: Cell[] = new Array(right - left + 1).fill(null);
  for (const cell of cells)
    if (cell.column >= left && cell.column <= right) found[cell.column - left] = savedValue(cell);
  return found;
}

/** A formula that was saved without its value holds something, though nobody knows what. */
const savedValue = ({ value, unsaved }: SheetCell): Cell => (unsaved ? { error: "#N/A" } : value);
