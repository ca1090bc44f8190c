import type { Cell } from "../../../cells/cell.ts";
import type { SheetArea } from "../../../workbook/formula/referencesIn.ts";
import type { CellStore } from "./cellStore.ts";
import { keysOf } from "./criteria.ts";

/** The rows of a column that hold each value, in order, as far down as was asked for. */
interface ColumnIndex {
  rows: Map<string, number[]>;
  from: number;
  to: number;
}

/**
 * Which rows of a column hold a value, kept from formula to formula: filled-down formulas look through the same column
 * again and again, and a range that grows by a row each time is only read on.
 */
export class RangeIndex {
  readonly #store: CellStore;
  #columns = new Map<string, ColumnIndex>();

  constructor(store: CellStore) {
    this.#store = store;
  }

  forget(): void {
    this.#columns.clear();
  }

  /** Rows within the area (one column) whose cell is found by one of these keys. */
  rows({ sheet, area }: SheetArea, keys: readonly string[]): readonly number[] {
    const { top, left } = area;
    const bottom = Math.min(area.bottom, this.#store.column(sheet, left).length - 1);
    const index = this.#indexFor(sheet, left, top, bottom);
    const lists = keys.flatMap((key) => {
      const rows = within(index.rows.get(key) ?? [], top, bottom);
      return rows.length === 0 ? [] : [rows];
    });
    const [only] = lists;
    const found = lists.length < 2 ? (only ?? []) : lists.flat().sort((one, other) => one - other);
    this.#store.spend(found.length + 1);
    return found;
  }

  #indexFor(sheet: number, column: number, top: number, bottom: number): ColumnIndex {
    const name = `${sheet} ${column} ${top}`;
    let index = this.#columns.get(name);
    if (!index) {
      index = { rows: new Map(), from: top, to: top - 1 };
      this.#columns.set(name, index);
    }
    const cells: readonly Cell[] = this.#store.column(sheet, column);
    if (bottom > index.to) this.#store.spend(bottom - index.to);
    for (let row = index.to + 1; row <= bottom; row += 1) {
      for (const key of keysOf(cells[row] ?? null)) {
        const rows = index.rows.get(key);
        if (rows) rows.push(row);
        else index.rows.set(key, [row]);
      }
    }
    index.to = Math.max(index.to, bottom);
    return index;
  }
}

function within(rows: readonly number[], top: number, bottom: number): readonly number[] {
  if (rows.length === 0 || ((rows[0] as number) >= top && (rows.at(-1) as number) <= bottom)) return rows;
  return rows.slice(firstAtLeast(rows, top), firstAtLeast(rows, bottom + 1));
}

function firstAtLeast(rows: readonly number[], wanted: number): number {
  let [low, high] = [0, rows.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((rows[middle] as number) < wanted) low = middle + 1;
    else high = middle;
  }
  return low;
}
