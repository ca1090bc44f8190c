import { type Cell, isCellError } from "../../../cells/cell.ts";
import type { Area } from "../../../workbook/address.ts";
import type { SheetArea } from "../../../workbook/formula/referencesIn.ts";
import type { CellStore } from "./cellStore.ts";
import { type Criterion, readCriterion } from "./criteria.ts";
import type { Calling, WorksheetFunction } from "./evaluateFormula.ts";
import type { RangeIndex } from "./rangeIndex.ts";
import { countBefore, type Sorted, type SortedNumbers } from "./sortedNumbers.ts";
import { errorOf, gridOr, isGrid, isReference, type Value } from "./values.ts";

/** What is made of the cells that fit. */
type Summing = (values: readonly Cell[]) => Cell;

const numbers = (values: readonly Cell[]): readonly number[] =>
  values.filter((value): value is number => typeof value === "number");
const errorIn = (values: readonly Cell[]): Cell | undefined => values.find(isCellError);

const sum: Summing = (values) => errorIn(values) ?? numbers(values).reduce((total, value) => total + value, 0);
const average: Summing = (values) => {
  const found = numbers(values);
  return errorIn(values) ?? (found.length === 0 ? errorOf("#DIV/0!") : Number(sum(found)) / found.length);
};
const most: Summing = (values) =>
  errorIn(values) ?? numbers(values).reduce((one, other) => Math.max(one, other), numbers(values)[0] ?? 0);
const least: Summing = (values) =>
  errorIn(values) ?? numbers(values).reduce((one, other) => Math.min(one, other), numbers(values)[0] ?? 0);

interface Condition {
  readonly area: SheetArea;
  readonly criterion: Criterion;
}

const heightOf = ({ top, bottom }: Area): number => bottom - top + 1;
const widthOf = ({ left, right }: Area): number => right - left + 1;

/** Places (row and column within the ranges) at which all conditions hold; blank cells below what is filled are counted apart. */
function placesThatFit(
  conditions: readonly Condition[],
  store: CellStore,
  index: RangeIndex,
): { readonly rows: readonly number[]; readonly columns: readonly number[]; readonly blanksBelow: number } {
  const [first] = conditions as [Condition];
  const [height, width] = [heightOf(first.area.area), widthOf(first.area.area)];
  const filled = Math.max(
    ...conditions.map(({ area }) => {
      store.watch?.(area);
      const part = store.filledPart(area);
      return part.bottom - area.area.top + 1;
    }),
  );
  const rows: number[] = [];
  const columns: number[] = [];
  const fitting = (condition: Condition, row: number, column: number): boolean => {
    const { area, sheet } = condition.area;
    return condition.criterion.fits(store.column(sheet, area.left + column)[area.top + row] ?? null);
  };
  const looked = Math.min(height, filled);
  const found = width === 1 ? fewestByKey(conditions, index) : undefined;
  if (found) {
    for (const row of found.rows) {
      const index = row - found.by.area.area.top;
      if (conditions.every((condition) => condition === found.by || fitting(condition, index, 0))) {
        rows.push(index);
        columns.push(0);
      }
    }
    store.spend(found.rows.length * (conditions.length - 1) + rows.length);
  } else {
    store.spend(looked * width * conditions.length);
    for (let row = 0; row < looked; row += 1) {
      for (let column = 0; column < width; column += 1) {
        if (!conditions.every((condition) => fitting(condition, row, column))) continue;
        rows.push(row);
        columns.push(column);
      }
    }
  }
  const below = conditions.every(({ criterion }) => criterion.fitsBlank) ? (height - looked) * width : 0;
  return { rows, columns, blanksBelow: below };
}

/** Of the conditions that ask for one value, the one whose value stands in the fewest rows, with these rows. */
function fewestByKey(conditions: readonly Condition[], index: RangeIndex) {
  let fewest: { readonly by: Condition; readonly rows: readonly number[] } | undefined;
  for (const by of conditions) {
    const { keys } = by.criterion;
    if (keys === undefined) continue;
    const rows = index.rows(by.area, keys);
    if (!fewest || rows.length < fewest.rows.length) fewest = { by, rows };
  }
  return fewest;
}

const oneArea = (value: Value | undefined): SheetArea | undefined =>
  isReference(value) && value.areas.length === 1 ? value.areas[0] : undefined;

/** Each criterion of an array gives an answer of its own. */
function forEachCriterion(
  criteria: readonly (Value | undefined)[],
  calling: Calling,
  compute: (criteria: readonly Cell[]) => Cell,
): Value {
  const contents = criteria.map((value) => calling.content(value));
  const shape = contents.find(isGrid);
  if (!shape) return compute(contents as Cell[]);
  const rows = Math.max(...contents.map((one) => (isGrid(one) ? one.grid.length : 1)));
  const columns = Math.max(...contents.map((one) => (isGrid(one) ? (one.grid[0]?.length ?? 0) : 1)));
  const at = (one: (typeof contents)[number], row: number, column: number): Cell => {
    if (!isGrid(one)) return one;
    const line = one.grid[one.grid.length === 1 ? 0 : row];
    return line?.[line.length === 1 ? 0 : column] ?? null;
  };
  return gridOr(
    Array.from({ length: rows }, (_, row) =>
      Array.from({ length: columns }, (__, column) => compute(contents.map((one) => at(one, row, column)))),
    ),
  );
}

function answer(
  ranges: readonly (Value | undefined)[],
  criteria: readonly (Value | undefined)[],
  summed: Value | undefined | "count",
  summing: Summing,
  calling: Calling,
  { index, sorted }: Indexes,
  fixed: boolean,
  isRefused: (cell: Cell) => boolean,
): Value {
  const areas = ranges.map(oneArea);
  if (areas.includes(undefined) || areas.length === 0) return areas.length === 0 ? errorOf("#N/A") : refusalOf(ranges);
  const [first] = areas as [SheetArea];
  const [height, width] = [heightOf(first.area), widthOf(first.area)];
  const same = (area: Area): boolean => heightOf(area) === height && widthOf(area) === width;
  if ((areas as SheetArea[]).some(({ area }) => !same(area))) return errorOf("#VALUE!");
  const from = summed === "count" ? undefined : oneArea(summed);
  if (summed !== "count" && (!from || (fixed && !same(from.area))))
    return from ? errorOf("#VALUE!") : refusalOf([summed]);
  const { store, toNumber } = calling;
  if (from) {
    const { top, left } = from.area;
    store.watch?.({ sheet: from.sheet, area: { top, left, bottom: top + height - 1, right: left + width - 1 } });
  }
  return forEachCriterion(criteria, calling, (cells) => {
    if (cells.some(isRefused)) return errorOf("#VALUE!");
    const conditions = cells.map((cell, index) => ({
      area: areas[index] as SheetArea,
      criterion: readCriterion(cell, toNumber),
    }));
    const [only] = conditions;
    if (!from && conditions.length === 1 && only?.criterion.bound)
      return countIn(sorted.of(only.area), only.criterion.bound);
    const { rows, columns, blanksBelow } = placesThatFit(conditions, store, index);
    if (!from) return rows.length + blanksBelow;
    return summing(
      rows.map((row, index) => {
        const column = store.column(from.sheet, from.area.left + (columns[index] as number));
        return column[from.area.top + row] ?? null;
      }),
    );
  });
}

/** How many numbers are less or more than one: the rest of a range does not fit. */
function countIn({ numbers }: Sorted, { passes, fitsBefore }: NonNullable<Criterion["bound"]>): number {
  const before = countBefore(numbers, passes);
  return fitsBefore ? before : numbers.length - before;
}

function refusalOf(values: readonly (Value | undefined)[]): Value {
  const error = values.find((value) => isCellError(value as Cell));
  return error ?? errorOf("#VALUE!");
}

interface Indexes {
  readonly index: RangeIndex;
  readonly sorted: SortedNumbers;
}

/** COUNTIF and its kin, over an index of the values of each column and its numbers in order. */
export function conditionals(
  index: RangeIndex,
  sorted: SortedNumbers,
  isUnclear: (text: string) => boolean,
): ReadonlyMap<string, WorksheetFunction> {
  const indexes = { index, sorted };
  // A criterion such as >=01/03/2026 would be held against texts, and no date would fit it.
  const isRefused = (cell: Cell): boolean =>
    typeof cell === "string" && cell.length < 64 && isUnclear(/^\s*[<>]=?\s*(.+)$/s.exec(cell)?.[1] ?? "");
  const single =
    (summing: Summing): WorksheetFunction =>
    ([range, criterion, summed], calling) =>
      answer([range], [criterion], summed ?? range, summing, calling, indexes, false, isRefused);
  const every = (values: readonly (Value | undefined)[], odd: number): readonly (Value | undefined)[] =>
    values.filter((_, index) => index % 2 === odd);
  const several =
    (summing: Summing): WorksheetFunction =>
    ([summed, ...given], calling) =>
      given.length < 2 || given.length % 2 !== 0
        ? errorOf("#N/A")
        : answer(every(given, 0), every(given, 1), summed, summing, calling, indexes, true, isRefused);
  return new Map<string, WorksheetFunction>([
    [
      "COUNTIF",
      ([range, criterion], calling) => answer([range], [criterion], "count", sum, calling, indexes, false, isRefused),
    ],
    [
      "COUNTIFS",
      (given, calling) =>
        given.length < 2 || given.length % 2 !== 0
          ? errorOf("#N/A")
          : answer(every(given, 0), every(given, 1), "count", sum, calling, indexes, true, isRefused),
    ],
    ["SUMIF", single(sum)],
    ["AVERAGEIF", single(average)],
    ["SUMIFS", several(sum)],
    ["AVERAGEIFS", several(average)],
    ["MAXIFS", several(most)],
    ["MINIFS", several(least)],
  ]);
}
