import { type Cell, isCellError } from "../../../cells/cell.ts";
import type { SheetArea } from "../../../workbook/formula/referencesIn.ts";
import type { CellStore } from "./cellStore.ts";
import { nameOf } from "./values.ts";

export interface Sorted {
  /** The smallest first. */
  readonly numbers: Float64Array;
  /** The first error in the range, row by row; undefined where there is none. */
  readonly error: Cell | undefined;
}

// Twenty columns of 100,000 records; measured, they take 16 MB.
const mostHeld = 2_000_000;
// What putting a number in its place takes, in cells that are read; measured.
const perNumber = 4;

/**
 * The numbers of a range in order, kept from formula to formula: ranks, places and counts down a column ask for the same
 * range again and again.
 */
export class SortedNumbers {
  readonly #store: CellStore;
  #known = new Map<string, Sorted>();
  #held = 0;

  constructor(store: CellStore) {
    this.#store = store;
  }

  forget(): void {
    this.#known.clear();
    this.#held = 0;
  }

  of({ sheet, area }: SheetArea): Sorted {
    this.#store.watch?.({ sheet, area });
    const name = nameOf({ sheet, area });
    const known = this.#known.get(name);
    // As many steps as a search takes.
    this.#store.spend(20);
    if (known) return known;
    const sorted = this.#read({ sheet, area });
    if (this.#held + sorted.numbers.length > mostHeld) this.forget();
    this.#held += sorted.numbers.length;
    this.#known.set(name, sorted);
    return sorted;
  }

  #read({ sheet, area }: SheetArea): Sorted {
    const { top, left, bottom, right } = this.#store.filledPart({ sheet, area });
    this.#store.spend(perNumber * (bottom - top + 1) * (right - left + 1));
    const numbers: number[] = [];
    let error: { readonly cell: Cell; readonly row: number } | undefined;
    for (let column = left; column <= right; column += 1) {
      const cells = this.#store.column(sheet, column);
      for (let row = top; row <= Math.min(bottom, cells.length - 1); row += 1) {
        const cell = cells[row] ?? null;
        if (typeof cell === "number") numbers.push(cell);
        else if (isCellError(cell) && (!error || row < error.row)) error = { cell, row };
      }
    }
    return { numbers: Float64Array.from(numbers).sort(), error: error?.cell };
  }
}

/** How many numbers stand before the first that passes; those after it pass too. */
export function countBefore(numbers: Float64Array, passes: (value: number) => boolean): number {
  let [low, high] = [0, numbers.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (passes(numbers[middle] as number)) high = middle;
    else low = middle + 1;
  }
  return low;
}
