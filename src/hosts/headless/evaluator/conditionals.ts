import { type Cell, isCellError } from "../../../cells/cell.ts";
import type { Area } from "../../../workbook/address.ts";
import type { SheetArea } from "../../../workbook/formula/referencesIn.ts";
import type { CellStore } from "./cellStore.ts";
import { type Criterion, readCriterion } from "./criteria.ts";
import type { Calling, WorksheetFunction } from "./evaluateFormula.ts";
import type { KeptAnswers } from "./keptAnswers.ts";
import type { RangeIndex } from "./rangeIndex.ts";
import { countBefore, type Sorted, type SortedNumbers } from "./sortedNumbers.ts";
import { errorOf, gridOr, isGrid, isReference, nameOf, type Value } from "./values.ts";

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

/** A call of one of these functions. */
interface Asked {
  readonly name: string;
  readonly ranges: readonly (Value | undefined)[];
  readonly criteria: readonly (Value | undefined)[];
  /** What is made of the cells that fit, and in which range these stand; undefined where they are counted. */
  readonly summed?: { readonly range: Value | undefined; readonly by: Summing; readonly sameSize: boolean };
}

/** What is kept from formula to formula. */
interface Kept {
  readonly index: RangeIndex;
  readonly sorted: SortedNumbers;
  readonly answers: KeptAnswers;
}

function answer(
  { name, ranges, criteria, summed }: Asked,
  calling: Calling,
  { index, sorted, answers }: Kept,
  isRefused: (cell: Cell) => boolean,
): Value {
  const areas = ranges.map(oneArea);
  if (areas.includes(undefined) || areas.length === 0) return areas.length === 0 ? errorOf("#N/A") : refusalOf(ranges);
  const [first] = areas as [SheetArea];
  const [height, width] = [heightOf(first.area), widthOf(first.area)];
  const same = (area: Area): boolean => heightOf(area) === height && widthOf(area) === width;
  if ((areas as SheetArea[]).some(({ area }) => !same(area))) return errorOf("#VALUE!");
  const from = summed && oneArea(summed.range);
  if (summed && (!from || (summed.sameSize && !same(from.area))))
    return from ? errorOf("#VALUE!") : refusalOf([summed.range]);
  const { store, toNumber } = calling;
  if (from) {
    const { top, left } = from.area;
    store.watch?.({ sheet: from.sheet, area: { top, left, bottom: top + height - 1, right: left + width - 1 } });
  }
  return forEachCriterion(criteria, calling, (cells) => {
    if (cells.some(isRefused)) return errorOf("#VALUE!");
    for (const area of areas as SheetArea[]) store.watch?.(area);
    const question = [name, from ? nameOf(from) : "", ...areas.map((area) => nameOf(area as SheetArea))];
    return answers.of([...question, ...cells.map(spelled)].join("|"), () => {
      const conditions = cells.map((cell, index) => ({
        area: areas[index] as SheetArea,
        criterion: readCriterion(cell, toNumber, (cost) => store.spend(cost)),
      }));
      const [only] = conditions;
      if (!from && conditions.length === 1 && only?.criterion.bound)
        return countIn(sorted.of(only.area), only.criterion.bound);
      const { rows, columns, blanksBelow } = placesThatFit(conditions, store, index);
      if (!from || !summed) return rows.length + blanksBelow;
      store.spend(rows.length);
      return summed.by(
        rows.map((row, index) => {
          const column = store.column(from.sheet, from.area.left + (columns[index] as number));
          return column[from.area.top + row] ?? null;
        }),
      );
    });
  });
}

/** A criterion as a part of a question: with its length, so that no text can be taken for two. */
function spelled(cell: Cell): string {
  const text = isCellError(cell) ? cell.error : String(cell);
  return `${typeof cell} ${text.length} ${text}`;
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

/** COUNTIF and its kin, over an index of the values of each column and its numbers in order. */
export function conditionals(kept: Kept, isUnclear: (text: string) => boolean): ReadonlyMap<string, WorksheetFunction> {
  // A criterion such as >=01/03/2026 would be held against texts, and no date would fit it.
  const isRefused = (cell: Cell): boolean =>
    typeof cell === "string" && cell.length < 64 && isUnclear(/^\s*[<>]=?\s*(.+)$/s.exec(cell)?.[1] ?? "");
  const every = (values: readonly (Value | undefined)[], odd: number): readonly (Value | undefined)[] =>
    values.filter((_, index) => index % 2 === odd);
  const single = (name: string, by: Summing): readonly [string, WorksheetFunction] => [
    name,
    ([range, criterion, third], calling) => {
      const summed = { range: third ?? range, by, sameSize: false };
      return answer({ name, ranges: [range], criteria: [criterion], summed }, calling, kept, isRefused);
    },
  ];
  const several = (name: string, by: Summing | undefined): readonly [string, WorksheetFunction] => [
    name,
    (all, calling) => {
      const [range, ...others] = all;
      const given = by ? others : all;
      if (given.length < 2 || given.length % 2 !== 0) return errorOf("#N/A");
      const asked = { name, ranges: every(given, 0), criteria: every(given, 1) };
      const summed = by && { range, by, sameSize: true };
      return answer(summed ? { ...asked, summed } : asked, calling, kept, isRefused);
    },
  ];
  return new Map<string, WorksheetFunction>([
    [
      "COUNTIF",
      ([range, criterion], calling) =>
        answer({ name: "COUNTIF", ranges: [range], criteria: [criterion] }, calling, kept, isRefused),
    ],
    several("COUNTIFS", undefined),
    single("SUMIF", sum),
    single("AVERAGEIF", average),
    several("SUMIFS", sum),
    several("AVERAGEIFS", average),
    several("MAXIFS", most),
    several("MINIFS", least),
  ]);
}
