import { type Cell, isCellError } from "../../../cells/cell.ts";
import type { SheetArea } from "../../../workbook/formula/referencesIn.ts";
import type { CellStore } from "./cellStore.ts";
import type { Calling, WorksheetFunction } from "./evaluateFormula.ts";
import { numberOf } from "./operators.ts";
import { errorOf, isGrid, isReference, type Value } from "./values.ts";

/** What is known of the cells of a range so far. */
interface Totals {
  sum: number;
  numbers: number;
  filled: number;
  emptyTexts: number;
  most: number;
  least: number;
  product: number;
  error: Cell;
}

const none = (): Totals => ({
  sum: 0,
  numbers: 0,
  filled: 0,
  emptyTexts: 0,
  most: Number.NEGATIVE_INFINITY,
  least: Number.POSITIVE_INFINITY,
  product: 1,
  error: null,
});

function add(totals: Totals, cell: Cell): void {
  if (cell === null) return;
  totals.filled += 1;
  if (cell === "") totals.emptyTexts += 1;
  if (typeof cell === "number") {
    totals.sum += cell;
    totals.numbers += 1;
    totals.product *= cell;
    if (cell > totals.most) totals.most = cell;
    if (cell < totals.least) totals.least = cell;
  } else if (typeof cell === "object") totals.error ??= cell;
}

/** Totals of ranges that grow by a row from formula to formula are read on, not read again. */
export class RunningTotals {
  readonly #store: CellStore;
  #known = new Map<string, { readonly totals: Totals; to: number }>();

  constructor(store: CellStore) {
    this.#store = store;
  }

  forget(): void {
    this.#known.clear();
  }

  of({ sheet, area }: SheetArea): Totals {
    this.#store.watch?.({ sheet, area });
    const part = this.#store.filledPart({ sheet, area });
    const name = `${sheet} ${area.top} ${area.left} ${area.right}`;
    let known = this.#known.get(name);
    if (!known || known.to > part.bottom) {
      known = { totals: none(), to: area.top - 1 };
      this.#known.set(name, known);
    }
    this.#store.spend((part.bottom - known.to) * (part.right - part.left + 1));
    const columns: (readonly Cell[])[] = [];
    for (let column = part.left; column <= part.right; column += 1) columns.push(this.#store.column(sheet, column));
    for (let row = known.to + 1; row <= part.bottom; row += 1) {
      for (const column of columns) add(known.totals, column[row] ?? null);
    }
    known.to = part.bottom;
    return known.totals;
  }
}

function totalsOf(given: readonly (Value | undefined)[], calling: Calling, running: RunningTotals, counting: boolean) {
  const all = none();
  for (const value of given) {
    if (isReference(value)) {
      for (const area of value.areas) {
        const totals = running.of(area);
        all.sum += totals.sum;
        all.numbers += totals.numbers;
        all.filled += totals.filled;
        all.emptyTexts += totals.emptyTexts;
        all.product *= totals.product;
        if (totals.most > all.most) all.most = totals.most;
        if (totals.least < all.least) all.least = totals.least;
        all.error ??= totals.error;
      }
      continue;
    }
    const content = calling.content(value);
    if (isGrid(content)) {
      for (const line of content.grid) for (const cell of line) add(all, cell);
      continue;
    }
    if (isCellError(content)) {
      add(all, content);
      continue;
    }
    // What is typed into the formula counts as the number it can be read as.
    const number = numberOf(content, calling.toNumber);
    if (number !== undefined) add(all, number);
    else if (counting) all.filled += 1;
    else all.error ??= errorOf("#VALUE!");
  }
  return all;
}

const sizeOf = ({ area: { top, left, bottom, right } }: SheetArea): number => (bottom - top + 1) * (right - left + 1);

const finite = (value: number): Cell => (Number.isFinite(value) ? value : errorOf("#NUM!"));

/** Sums, counts and extremes of cells, ranges and arrays. */
export function aggregates(running: RunningTotals): ReadonlyMap<string, WorksheetFunction> {
  const of =
    (make: (totals: Totals) => Cell): WorksheetFunction =>
    (given, calling) => {
      const totals = totalsOf(given, calling, running, false);
      return totals.error ?? make(totals);
    };
  return new Map<string, WorksheetFunction>([
    ["SUM", of(({ sum }) => finite(sum))],
    ["PRODUCT", of(({ product, numbers }) => (numbers === 0 ? 0 : finite(product)))],
    ["AVERAGE", of(({ sum, numbers }) => (numbers === 0 ? errorOf("#DIV/0!") : finite(sum / numbers)))],
    ["MAX", of(({ most, numbers }) => (numbers === 0 ? 0 : most))],
    ["MIN", of(({ least, numbers }) => (numbers === 0 ? 0 : least))],
    ["COUNT", (given, calling) => totalsOf(given, calling, running, true).numbers],
    [
      "COUNTA",
      (given, calling) => given.reduce<number>((count, value) => count + filledIn(value, calling, running), 0),
    ],
    [
      "COUNTBLANK",
      ([range]) => {
        if (!isReference(range)) return errorOf("#VALUE!");
        // What is not filled is blank, and so is an empty text.
        return range.areas.reduce((count, reference) => {
          const { filled, emptyTexts } = running.of(reference);
          return count + sizeOf(reference) - filled + emptyTexts;
        }, 0);
      },
    ],
  ]);
}

function filledIn(value: Value | undefined, calling: Calling, running: RunningTotals): number {
  if (isReference(value)) return value.areas.reduce((count, area) => count + running.of(area).filled, 0);
  const content = calling.content(value);
  if (!isGrid(content)) return 1;
  return content.grid.reduce((count, line) => count + line.filter((cell) => cell !== null).length, 0);
}
