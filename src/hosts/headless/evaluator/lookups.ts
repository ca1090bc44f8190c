import { type Cell, isCellError } from "../../../cells/cell.ts";
import { NotWorkedOut } from "../../../workbook/formula/notWorkedOut.ts";
import type { SheetArea } from "../../../workbook/formula/referencesIn.ts";
import type { CellStore } from "./cellStore.ts";
import { keysOf, wildcard } from "./criteria.ts";
import type { Calling, WorksheetFunction } from "./evaluateFormula.ts";
import { compareCells, numberOf } from "./operators.ts";
import type { RangeIndex } from "./rangeIndex.ts";
import { errorOf, firstOf, type Grid, isGrid, isReference, lift, type Reference, type Value } from "./values.ts";

/** A row or column that is looked through. */
interface Vector {
  readonly length: number;
  readonly at: (index: number) => Cell;
  /** The column it is, where an index may be used. */
  readonly column?: SheetArea;
  /** Of an array: where each value stands, in order; for many keys that look through one array. */
  readonly places?: (key: string) => readonly number[];
}

type How = "exact" | "wildcard" | "or smaller" | "or larger";

function vectorOf(value: Value | undefined, calling: Calling): Vector | undefined {
  if (isReference(value)) {
    const [only] = value.areas;
    if (!only || value.areas.length > 1) return undefined;
    const { store } = calling;
    store.watch?.(only);
    const { sheet, area } = only;
    const part = store.filledPart(only);
    if (area.left === area.right) {
      const cells = store.column(sheet, area.left);
      return { length: part.bottom - area.top + 1, at: (index) => cells[area.top + index] ?? null, column: only };
    }
    if (area.top !== area.bottom) return undefined;
    return {
      length: part.right - area.left + 1,
      at: (index) => store.column(sheet, area.left + index)[area.top] ?? null,
    };
  }
  const content = calling.content(value);
  if (!isGrid(content)) return { length: 1, at: () => content };
  const { grid } = content;
  const [first = []] = grid;
  if (grid.length === 1) return arrayVector(first.length, (index) => first[index] ?? null, calling.store);
  return first.length === 1 ? arrayVector(grid.length, (index) => grid[index]?.[0] ?? null, calling.store) : undefined;
}

function arrayVector(length: number, at: Vector["at"], store: CellStore): Vector {
  let known: Map<string, number[]> | undefined;
  const places = (key: string): readonly number[] => {
    known ??= placesByKey(length, at, store);
    store.spend(1);
    return known.get(key) ?? [];
  };
  return { length, at, places };
}

function placesByKey(length: number, at: Vector["at"], store: CellStore): Map<string, number[]> {
  store.spend(length);
  const found = new Map<string, number[]>();
  for (let index = 0; index < length; index += 1) {
    for (const key of keysOf(at(index))) {
      const places = found.get(key);
      if (places) places.push(index);
      else found.set(key, [index]);
    }
  }
  return found;
}

const sameKind = (cell: Cell, wanted: Cell): boolean => cell !== null && typeof cell === typeof wanted;

/** The place of the last value of an ascending list that is not above what is wanted; others between are passed over. */
function lastNotAbove(wanted: Cell, vector: Vector, store: CellStore): number {
  let [low, high, found] = [0, vector.length - 1, -1];
  while (low <= high) {
    const middle = (low + high) >> 1;
    let at = middle;
    while (at <= high && !(sameKind(vector.at(at), wanted) && !isCellError(vector.at(at)))) at += 1;
    store.spend(at - middle + 1);
    if (at > high) high = middle - 1;
    else {
      const order = compareCells(vector.at(at), wanted);
      if (order === 0) return lastAlike(at, vector, store);
      if (order < 0) {
        found = at;
        low = at + 1;
      } else high = middle - 1;
    }
  }
  return found;
}

/** The last of equal values that follow one another. */
function lastAlike(from: number, vector: Vector, store: CellStore): number {
  let at = from;
  while (
    at + 1 < vector.length &&
    sameKind(vector.at(at + 1), vector.at(from)) &&
    compareCells(vector.at(at + 1), vector.at(from)) === 0
  )
    at += 1;
  store.spend(at - from);
  return at;
}

function firstEqual(wanted: Cell, vector: Vector, how: How, backwards: boolean, store: CellStore, index: RangeIndex) {
  const pattern =
    how === "wildcard" && typeof wanted === "string" && /[*?~]/.test(wanted)
      ? wildcard(wanted, (cells) => store.spend(cells))
      : undefined;
  const { column, places } = vector;
  if (!pattern && (column || places)) {
    const key = keysOf(wanted)[0] ?? "";
    const found = column ? index.rows(column, [key]) : (places?.(key) ?? []);
    const first = backwards ? found.at(-1) : found[0];
    return first === undefined ? -1 : first - (column?.area.top ?? 0);
  }
  const fits = (cell: Cell): boolean =>
    pattern ? typeof cell === "string" && pattern(cell) : sameKind(cell, wanted) && compareCells(cell, wanted) === 0;
  store.spend(vector.length);
  for (let step = 0; step < vector.length; step += 1) {
    const index = backwards ? vector.length - 1 - step : step;
    if (fits(vector.at(index))) return index;
  }
  return -1;
}

/** The nearest value on one side, in a list in any order. */
function nearest(wanted: Cell, vector: Vector, larger: boolean, store: CellStore): number {
  let found = -1;
  store.spend(vector.length);
  for (let index = 0; index < vector.length; index += 1) {
    const cell = vector.at(index);
    if (!sameKind(cell, wanted)) continue;
    const order = compareCells(cell, wanted);
    if (order === 0) return index;
    if (larger ? order < 0 : order > 0) continue;
    const better =
      found === -1 || (larger ? compareCells(cell, vector.at(found)) < 0 : compareCells(cell, vector.at(found)) > 0);
    if (better) found = index;
  }
  return found;
}

const eachKey = (keys: Value | undefined, calling: Calling, find: (key: Cell) => Cell): Cell | Grid =>
  lift([calling.content(keys)], (key) => (isCellError(key) ? key : find(key ?? 0)));

function numberAt(value: Value | undefined, otherwise: number, calling: Calling): number {
  if (value === undefined) return otherwise;
  const cell = firstOf(calling.content(value));
  return isCellError(cell) ? Number.NaN : (numberOf(cell, calling.toNumber) ?? Number.NaN);
}

const missing = errorOf("#N/A");

/** MATCH, VLOOKUP and their kin. Exact ones use an index of the column. */
export function lookups(index: RangeIndex): ReadonlyMap<string, WorksheetFunction> {
  const match: WorksheetFunction = ([keys, list, type], calling) => {
    const vector = vectorOf(list, calling);
    if (isCellError(list as Cell)) return list as Cell;
    if (!vector) return missing;
    const kind = type === undefined ? 1 : numberAt(type, 1, calling);
    if (Number.isNaN(kind)) return errorOf("#VALUE!");
    return eachKey(keys, calling, (key) => {
      const place =
        kind === 0
          ? firstEqual(key, vector, "wildcard", false, calling.store, index)
          : kind > 0
            ? lastNotAbove(key, vector, calling.store)
            : firstNotBelow(key, vector, calling.store);
      return place === -1 ? missing : place + 1;
    });
  };

  const table =
    (down: boolean): WorksheetFunction =>
    ([keys, range, number, sorted], calling) => {
      if (isCellError(range as Cell)) return range as Cell;
      const approximate = sorted === undefined ? true : truthy(sorted, calling);
      const wanted = numberAt(number, Number.NaN, calling);
      if (Number.isNaN(wanted)) return errorOf("#VALUE!");
      const place = Math.trunc(wanted);
      const lines = linesOf(range, down, calling);
      if (!lines) return errorOf("#VALUE!");
      if (place < 1) return errorOf("#VALUE!");
      if (place > lines.count) return errorOf("#REF!");
      const first = vectorOf(lines.line(0), calling);
      const result = vectorOf(lines.line(place - 1), calling);
      if (!first || !result) return errorOf("#VALUE!");
      return eachKey(keys, calling, (key) => {
        const at = approximate
          ? lastNotAbove(key, first, calling.store)
          : firstEqual(key, first, "wildcard", false, calling.store, index);
        return at === -1 ? missing : result.at(at);
      });
    };

  const lookup: WorksheetFunction = ([keys, list, results], calling) => {
    if (isCellError(list as Cell)) return list as Cell;
    let [from, to] = [list, results];
    if (results === undefined) {
      // Of a block: the longer side is looked through, the last line gives the answer.
      const down = (linesOf(list, true, calling)?.count ?? 1) <= (linesOf(list, false, calling)?.count ?? 1);
      const lines = linesOf(list, down, calling);
      from = lines?.line(0);
      to = lines?.line(lines.count - 1);
    }
    const vector = vectorOf(from, calling);
    const result = vectorOf(to, calling);
    if (!vector || !result) return missing;
    return eachKey(keys, calling, (key) => {
      const at = lastNotAbove(key, vector, calling.store);
      return at === -1 ? missing : result.at(at);
    });
  };

  const place = (key: Cell, vector: Vector, mode: number, direction: number, calling: Calling): number => {
    const exact = firstEqual(key, vector, mode === 2 ? "wildcard" : "exact", direction < 0, calling.store, index);
    if (exact !== -1 || mode === 0 || mode === 2) return exact;
    return nearest(key, vector, mode === 1, calling.store);
  };

  const xmatch: WorksheetFunction = ([keys, list, mode, direction], calling) => {
    const vector = vectorOf(list, calling);
    if (!vector) return errorOf("#VALUE!");
    const [how, way] = [numberAt(mode, 0, calling), numberAt(direction, 1, calling)];
    return eachKey(keys, calling, (key) => {
      const at = place(key, vector, how, way, calling);
      return at === -1 ? missing : at + 1;
    });
  };

  /** A blank may be looked up as 0 or as a blank: where it makes a difference, nobody knows which. */
  const placeOfBlank = (vector: Vector, how: number, way: number, calling: Calling): number => {
    const asNumber = place(0, vector, how, way, calling);
    if (asNumber !== -1 || holdsBlank(vector)) throw new NotWorkedOut(blankKey);
    return asNumber;
  };

  const xlookup: WorksheetFunction = ([keys, list, results, otherwise, mode, direction], calling) => {
    const vector = vectorOf(list, calling);
    if (!vector) return errorOf("#VALUE!");
    const [how, way] = [numberAt(mode, 0, calling), numberAt(direction, 1, calling)];
    const instead = otherwise === undefined ? missing : calling.content(otherwise);
    const lines = linesOf(results, isTall(list, calling), calling);
    if (!lines) return errorOf("#VALUE!");
    const content = calling.content(keys);
    if (!isGrid(content)) {
      if (isCellError(content)) return content;
      const at = content === null ? placeOfBlank(vector, how, way, calling) : place(content, vector, how, way, calling);
      return at === -1 ? instead : lines.across(at);
    }
    const result = vectorOf(lines.line(0), calling);
    if (!result) return errorOf("#VALUE!");
    return eachKey(keys, calling, (key) => {
      const at = place(key, vector, how, way, calling);
      if (at !== -1) return result.at(at);
      return firstOf(instead);
    });
  };

  return new Map<string, WorksheetFunction>([
    ["MATCH", match],
    ["VLOOKUP", table(true)],
    ["HLOOKUP", table(false)],
    ["LOOKUP", lookup],
    ["XMATCH", xmatch],
    ["XLOOKUP", xlookup],
  ]);
}

const blankKey = "what is found for a blank cell is answered in different ways by spreadsheets";

/** Whether the list holds a blank, in its cells or below what is filled. */
const holdsBlank = ({ length, at, column }: Vector): boolean =>
  (column !== undefined && column.area.bottom - column.area.top + 1 > length) ||
  Array.from({ length }, (_, index) => at(index)).includes(null);

function firstNotBelow(wanted: Cell, vector: Vector, store: CellStore): number {
  store.spend(vector.length);
  let found = -1;
  for (let index = 0; index < vector.length; index += 1) {
    const cell = vector.at(index);
    if (!sameKind(cell, wanted)) continue;
    if (compareCells(cell, wanted) < 0) break;
    found = index;
  }
  return found;
}

function truthy(value: Value, calling: Calling): boolean {
  const cell = firstOf(calling.content(value));
  return typeof cell === "string" ? /^true$/i.test(cell) : Boolean(cell);
}

function isTall(value: Value | undefined, calling: Calling): boolean {
  if (isReference(value)) {
    const [only] = value.areas;
    return only !== undefined && only.area.bottom > only.area.top;
  }
  const content = calling.content(value);
  return isGrid(content) && content.grid.length > 1;
}

interface Lines {
  readonly count: number;
  /** A whole column (or row) of the block. */
  readonly line: (index: number) => Value;
  /** One row (or column) across all of them. */
  readonly across: (index: number) => Value;
}

/** A block as its columns, or as its rows. */
function linesOf(value: Value | undefined, down: boolean, calling: Calling): Lines | undefined {
  if (isReference(value)) {
    const [only] = value.areas;
    if (!only || value.areas.length > 1) return undefined;
    const { sheet, area } = only;
    const part = (change: Partial<SheetArea["area"]>): Reference => ({
      areas: [{ sheet, area: { ...area, ...change } }],
    });
    const column = (index: number) => part({ left: area.left + index, right: area.left + index });
    const row = (index: number) => part({ top: area.top + index, bottom: area.top + index });
    return down
      ? { count: area.right - area.left + 1, line: column, across: row }
      : { count: area.bottom - area.top + 1, line: row, across: column };
  }
  const content = calling.content(value);
  const grid = isGrid(content) ? content.grid : [[content]];
  const column = (index: number): Grid => ({ grid: grid.map((line) => [line[index] ?? null]) });
  const row = (index: number): Grid => ({ grid: [grid[index] ?? []] });
  return down
    ? { count: grid[0]?.length ?? 0, line: column, across: row }
    : { count: grid.length, line: row, across: column };
}
