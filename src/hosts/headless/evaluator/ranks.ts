import { type Cell, isCellError } from "../../../cells/cell.ts";
import type { SheetArea } from "../../../workbook/formula/referencesIn.ts";
import type { WorksheetFunction } from "./evaluateFormula.ts";
import { compareCells, numberOf } from "./operators.ts";
import { countBefore, type Sorted, type SortedNumbers } from "./sortedNumbers.ts";
import { errorOf, firstOf, isReference, lift } from "./values.ts";

interface Finder {
  readonly find: (name: string) => WorksheetFunction | undefined;
}

/** The nth number of a range, from its smallest or its largest. */
function nth({ numbers, error }: Sorted, place: number, fromEnd: boolean): Cell {
  if (error !== undefined) return error;
  return numbers[fromEnd ? numbers.length - place : place - 1] ?? errorOf("#NUM!");
}

/** The numbers of several ranges together. */
function together(areas: readonly SheetArea[], sorted: SortedNumbers): Sorted {
  const all = areas.map((area) => sorted.of(area));
  const [only] = all;
  if (only && all.length === 1) return only;
  return {
    numbers: Float64Array.from(all.flatMap(({ numbers }) => [...numbers])).sort(),
    error: all.find(({ error }) => error !== undefined)?.error,
  };
}

/** The place of a number among others, to the 15 digits that a spreadsheet compares. */
function rankOf(numbers: Float64Array, value: number, ascending: boolean, average: boolean): Cell {
  const below = countBefore(numbers, (other) => compareCells(other, value) >= 0);
  const upTo = countBefore(numbers, (other) => compareCells(other, value) > 0);
  const alike = upTo - below;
  if (alike === 0) return errorOf("#N/A");
  return (ascending ? below : numbers.length - upTo) + 1 + (average ? (alike - 1) / 2 : 0);
}

const rank =
  (sorted: SortedNumbers, average: boolean): WorksheetFunction =>
  ([wanted, list, order], { content, toNumber }) => {
    if (!isReference(list)) return errorOf("#VALUE!");
    const { numbers, error } = together(list.areas, sorted);
    if (error !== undefined) return error;
    const up = order === undefined ? 0 : numberOf(firstOf(content(order)), toNumber);
    return lift([content(wanted)], (cell) => {
      if (isCellError(cell)) return cell;
      const value = numberOf(cell, toNumber);
      return value === undefined || up === undefined ? errorOf("#VALUE!") : rankOf(numbers, value, up !== 0, average);
    });
  };

/** Of one range and one whole number; all else the library works out. */
const place =
  (sorted: SortedNumbers, fromEnd: boolean, library: WorksheetFunction): WorksheetFunction =>
  (given, calling) => {
    const [range, wanted] = given;
    const area = isReference(range) && range.areas.length === 1 ? range.areas[0] : undefined;
    const at = calling.content(wanted);
    return given.length === 2 && area && typeof at === "number" && Number.isInteger(at)
      ? nth(sorted.of(area), at, fromEnd)
      : library(given, calling);
  };

/** LARGE, SMALL and RANK, over ranges that are put in order once. */
export function ranks(sorted: SortedNumbers, { find }: Finder): ReadonlyMap<string, WorksheetFunction> {
  const made = new Map<string, WorksheetFunction>([
    ["RANK", rank(sorted, false)],
    ["RANK.EQ", rank(sorted, false)],
    ["RANK.AVG", rank(sorted, true)],
  ]);
  for (const name of ["LARGE", "SMALL"]) {
    const library = find(name);
    if (library) made.set(name, place(sorted, name === "LARGE", library));
  }
  return made;
}
