import type { Cell, Cells } from "../../../cells/cell.ts";
import type { Area } from "../../../workbook/address.ts";
import type { SheetArea } from "../../../workbook/formula/referencesIn.ts";
import { nameOf } from "./values.ts";

/** More work than a workbook may ask for; the formula is left as it was saved. */
export class TooMuch extends Error {
  override readonly name = "TooMuch";
}

/** The filled cells of one sheet, by column. */
export interface SheetCells {
  readonly columns: Map<number, Cell[]>;
  /** The last row and column that hold anything, or ever did in this run. */
  lastRow: number;
  lastColumn: number;
  readonly hidden: ReadonlySet<number>;
  /** Hidden by a filter. */
  readonly filtered: ReadonlySet<number>;
}

/**
 * The cells of a workbook while it is worked out.
 *
 * @param mostWork - so many cells may be read in all before formulas are left as saved
 */
export class CellStore {
  readonly sheets: readonly SheetCells[];
  /** Cells read so far. */
  work = 0;
  /** To be told of each area that is read, for formulas that work out which cells they read. */
  watch: ((area: SheetArea) => void) | undefined;
  /** Rows given for a range that is taller than what is filled; the range was cut where `cut` is true. */
  roomBelow = 1;
  cut = false;
  #mostWork: number;
  /** Blank cells that stand in the columns so that they have no holes. */
  #filling = 0;
  #kept = new Map<string, Cells>();
  #keptCells = 0;

  constructor(sheets: readonly Pick<SheetCells, "hidden" | "filtered">[], mostWork: number) {
    this.sheets = sheets.map(({ hidden, filtered }) => ({
      columns: new Map(),
      lastRow: 0,
      lastColumn: 0,
      hidden,
      filtered,
    }));
    this.#mostWork = mostWork;
  }

  put(sheet: number, row: number, column: number, value: Cell): void {
    const cells = this.sheets[sheet] as SheetCells;
    let list = cells.columns.get(column);
    if (!list) {
      list = [];
      cells.columns.set(column, list);
    }
    // No holes, as an array with holes is a slow map; but a thousand cells in the last row would take a thousand columns.
    const gap = row - list.length;
    if (gap <= smallGap || this.#filling + gap <= mostFilling) {
      for (let at = list.length; at < row; at += 1) list.push(null);
      this.#filling += Math.max(gap, 0);
    }
    list[row] = value;
    cells.lastRow = Math.max(cells.lastRow, row);
    cells.lastColumn = Math.max(cells.lastColumn, column);
  }

  /** Forgets what was kept of ranges, after a cell that may have been read has changed. */
  forget(): void {
    this.#kept.clear();
    this.#keptCells = 0;
  }

  at(sheet: number, row: number, column: number): Cell {
    this.watch?.({ sheet, area: { top: row, left: column, bottom: row, right: column } });
    return this.sheets[sheet]?.columns.get(column)?.[row] ?? null;
  }

  /** One column of an area, down to the last filled row; the cells are the store's own, and may have holes. */
  column(sheet: number, column: number): readonly Cell[] {
    return this.sheets[sheet]?.columns.get(column) ?? [];
  }

  /** Counts cells that were looked at. */
  spend(cells: number): void {
    this.work += cells;
    if (this.work > this.#mostWork) throw new TooMuch("it would take longer than a workbook may take");
  }

  /** The last filled row over all sheets, so that whole columns of several sheets are cut to one length. */
  lastRow(): number {
    return Math.max(...this.sheets.map(({ lastRow }) => lastRow));
  }

  lastColumn(): number {
    return Math.max(...this.sheets.map(({ lastColumn }) => lastColumn));
  }

  /** The area down to the last filled row of its sheet. */
  filledPart({ sheet, area }: SheetArea): Area {
    const { lastRow = 0, lastColumn = 0 } = this.sheets[sheet] ?? {};
    return {
      ...area,
      bottom: Math.max(area.top, Math.min(area.bottom, lastRow)),
      right: Math.max(area.left, Math.min(area.right, lastColumn)),
    };
  }

  /** The cells of an area as it is. */
  cells({ sheet, area }: SheetArea): Cells {
    this.watch?.({ sheet, area });
    const { top, left, bottom, right } = area;
    if (top === bottom && left === right) {
      this.spend(2);
      return [[this.sheets[sheet]?.columns.get(left)?.[top] ?? null]];
    }
    const size = (bottom - top + 1) * (right - left + 1);
    const name = nameOf({ sheet, area });
    const known = this.#kept.get(name);
    if (known) {
      // Whoever asks for them goes through them once more.
      this.spend(size);
      return known;
    }
    if (size > mostCells) throw new TooMuch("it reads more cells at once than can be held");
    this.spend(2 * size);
    const columns: (readonly Cell[])[] = [];
    for (let column = left; column <= right; column += 1) columns.push(this.column(sheet, column));
    const rows = new Array<readonly Cell[]>(bottom - top + 1);
    let above: readonly Cell[] | undefined;
    for (let row = top; row <= bottom; row += 1) {
      above = lineOf(columns, row, above);
      rows[row - top] = above;
    }
    this.#keep(name, rows, size);
    return rows;
  }

  /**
   * The cells of an area for an array, cut where it is much taller or wider than what is filled. Areas of the same
   * size are cut to the same size.
   */
  arrayCells({ sheet, area }: SheetArea): Cells {
    const height = area.bottom - area.top + 1;
    const width = area.right - area.left + 1;
    const rows = height > tall ? Math.min(height, this.lastRow() + 1 + this.roomBelow) : height;
    const columns = width > wide ? Math.min(width, this.lastColumn() + 1 + this.roomBelow) : width;
    if (rows < height || columns < width) this.cut = true;
    return this.cells({ sheet, area: { ...area, bottom: area.top + rows - 1, right: area.left + columns - 1 } });
  }

  #keep(name: string, rows: Cells, size: number): void {
    if (size > mostKept / 4) return;
    this.#kept.set(name, rows);
    this.#keptCells += size;
    for (const [oldest, other] of this.#kept) {
      if (this.#keptCells <= mostKept) return;
      this.#kept.delete(oldest);
      this.#keptCells -= other.length * (other[0]?.length ?? 0);
    }
  }
}

/** The cells of a row; where they are those of the row above, its very line, so that nothing is worked out twice. */
function lineOf(
  columns: readonly (readonly Cell[])[],
  row: number,
  above: readonly Cell[] | undefined,
): readonly Cell[] {
  let index = 0;
  if (above) while (index < columns.length && (columns[index]?.[row] ?? null) === above[index]) index += 1;
  if (above && index === columns.length) return above;
  const line = new Array<Cell>(columns.length);
  for (index = 0; index < columns.length; index += 1) line[index] = columns[index]?.[row] ?? null;
  return line;
}

const smallGap = 100;
const mostFilling = 10_000_000;

// Ranges up to this size are read as they are.
const tall = 5000;
const wide = 300;
// Ten columns of 100,000 records; measured, they take 65 MB.
const mostKept = 1_000_000;
const mostCells = 6_000_000;
