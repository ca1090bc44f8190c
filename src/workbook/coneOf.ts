import type { Place } from "./address.ts";
import { placeKey } from "./engine.ts";
import type { SheetArea } from "./formula/referencesIn.ts";

/** A formula with the cells it fills and the cells it reads. */
export interface Reader {
  readonly sheet: number;
  readonly cell: Place;
  /** The cells it fills beside its own. */
  readonly filled: readonly Place[];
  readonly reads: readonly SheetArea[];
}

/**
 * The formulas that hang on others: those given, and all that read what one of them fills.
 *
 * @param seeds - by place in the list
 * @returns the places of all of them
 */
export function coneOf(readers: readonly Reader[], seeds: Iterable<number>): ReadonlySet<number> {
  const cone = new Set<number>(seeds);
  const index = readersByCell(readers, cone);
  // A set goes on with what is added while it is gone through.
  for (const at of cone) {
    const { sheet, cell, filled } = readers[at] as Reader;
    for (const reader of index(sheet, cell)) cone.add(reader);
    for (const place of filled) for (const reader of index(sheet, place)) cone.add(reader);
  }
  return cone;
}

/** Finds the readers of a cell beyond those that are known; each is found once and then taken out. */
function readersByCell(
  readers: readonly Reader[],
  known: ReadonlySet<number>,
): (sheet: number, cell: Place) => readonly number[] {
  const single = new BySheet<number>();
  const columnsOfSheet = columnsFilled(readers);
  const ranges = new BySheet<Span>();
  readers.forEach((one, reader) => {
    // Before its reads are asked for, which are worked out then.
    if (known.has(reader)) return;
    for (const { sheet, area } of one.reads) {
      if (area.top === area.bottom && area.left === area.right) {
        single.add(sheet, placeKey(area.top, area.left), reader);
        continue;
      }
      for (const column of columnsOfSheet.get(sheet) ?? []) {
        if (column < area.left || column > area.right) continue;
        ranges.add(sheet, column, { top: area.top, bottom: area.bottom, reader });
      }
    }
  });
  const trees = new Map(
    [...ranges.lists].map(([sheet, columns]) => [
      sheet,
      new Map([...columns].map(([column, spans]) => [column, new Spans(spans)])),
    ]),
  );
  return (sheet, { row, column }) => {
    const alone = single.take(sheet, placeKey(row, column));
    const spanning = trees.get(sheet)?.get(column)?.take(row);
    return alone && spanning ? [...alone, ...spanning] : (alone ?? spanning ?? none);
  };
}

const none: readonly number[] = [];

/** Lists by sheet and a number in it; texts as keys would take longer than all the rest. */
class BySheet<T> {
  readonly lists = new Map<number, Map<number, T[]>>();

  add(sheet: number, key: number, item: T): void {
    let byKey = this.lists.get(sheet);
    if (!byKey) {
      byKey = new Map();
      this.lists.set(sheet, byKey);
    }
    const list = byKey.get(key);
    if (list) list.push(item);
    else byKey.set(key, [item]);
  }

  take(sheet: number, key: number): readonly T[] | undefined {
    const byKey = this.lists.get(sheet);
    const list = byKey?.get(key);
    if (list) byKey?.delete(key);
    return list;
  }
}

function columnsFilled(readers: readonly Reader[]): ReadonlyMap<number, ReadonlySet<number>> {
  const columns = new Map<number, Set<number>>();
  for (const { sheet, cell, filled } of readers) {
    let list = columns.get(sheet);
    if (!list) {
      list = new Set();
      columns.set(sheet, list);
    }
    list.add(cell.column);
    for (const { column } of filled) list.add(column);
  }
  return columns;
}

interface Span {
  readonly top: number;
  readonly bottom: number;
  readonly reader: number;
}

/** Spans of rows in a tree over their tops, with the lowest bottom of each part. */
class Spans {
  readonly #spans: readonly Span[];
  readonly #lowest: Int32Array;
  readonly #size: number;

  constructor(spans: readonly Span[]) {
    this.#spans = [...spans].sort((one, other) => one.top - other.top);
    this.#size = 2 ** Math.ceil(Math.log2(Math.max(spans.length, 1)));
    this.#lowest = new Int32Array(2 * this.#size).fill(-1);
    this.#spans.forEach(({ bottom }, at) => {
      this.#lowest[this.#size + at] = bottom;
    });
    for (let at = this.#size - 1; at > 0; at -= 1) this.#renew(at);
  }

  /** Takes out the readers of a row. */
  take(row: number): readonly number[] {
    const found: number[] = [];
    this.#walk(1, 0, this.#size, row, found);
    return found;
  }

  #renew(at: number): void {
    this.#lowest[at] = Math.max(this.#lowest[2 * at] as number, this.#lowest[2 * at + 1] as number);
  }

  // As deep as the logarithm of the number of spans.
  #walk(at: number, from: number, to: number, row: number, found: number[]): void {
    if ((this.#lowest[at] as number) < row || (this.#spans[from]?.top ?? Number.POSITIVE_INFINITY) > row) return;
    if (at >= this.#size) {
      found.push((this.#spans[at - this.#size] as Span).reader);
      this.#lowest[at] = -1;
      return;
    }
    const middle = (from + to) / 2;
    this.#walk(2 * at, from, middle, row, found);
    this.#walk(2 * at + 1, middle, to, row, found);
    this.#renew(at);
  }
}
