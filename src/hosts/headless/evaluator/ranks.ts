import type { Cell } from "../../../cells/cell.ts";
import type { SheetArea } from "../../../workbook/formula/referencesIn.ts";
import type { Calling, WorksheetFunction } from "./evaluateFormula.ts";
import { countBefore, type Sorted, type SortedNumbers } from "./sortedNumbers.ts";
import { errorOf, isReference, type Value } from "./values.ts";

interface Finder {
  readonly find: (name: string) => WorksheetFunction | undefined;
}

const oneArea = (value: Value | undefined): SheetArea | undefined =>
  isReference(value) && value.areas.length === 1 ? value.areas[0] : undefined;

/** The nth number of a range, from its smallest or its largest. */
function nth({ numbers, error }: Sorted, place: number, fromEnd: boolean): Cell {
  if (error !== undefined) return error;
  return numbers[fromEnd ? numbers.length - place : place - 1] ?? errorOf("#NUM!");
}

/** The place of a number in a range; undefined where it is not in it. */
function rankOf({ numbers, error }: Sorted, value: number, ascending: boolean): Cell | undefined {
  if (error !== undefined) return error;
  const before = countBefore(numbers, (other) => other >= value);
  if (numbers[before] !== value) return undefined;
  return ascending ? before + 1 : numbers.length - countBefore(numbers, (other) => other > value) + 1;
}

const whole = (content: unknown): content is number => Number.isInteger(content);

/**
 * LARGE, SMALL and RANK of one range and one number, over ranges that are put in order once; all else the
 * function that is found works out.
 */
export function ranks(sorted: SortedNumbers, { find }: Finder): ReadonlyMap<string, WorksheetFunction> {
  const made = new Map<string, WorksheetFunction>();
  const add = (name: string, own: (given: readonly (Value | undefined)[], calling: Calling) => Cell | undefined) => {
    const otherwise = find(name);
    if (otherwise) made.set(name, (given, calling) => own(given, calling) ?? otherwise(given, calling));
  };
  for (const name of ["LARGE", "SMALL"])
    add(name, (given, calling) => {
      const area = oneArea(given[0]);
      const place = calling.content(given[1]);
      return given.length === 2 && area && whole(place) ? nth(sorted.of(area), place, name === "LARGE") : undefined;
    });
  for (const name of ["RANK", "RANK.EQ"])
    add(name, (given, calling) => {
      const area = oneArea(given[1]);
      const [value, order] = [calling.content(given[0]), calling.content(given[2] ?? 0)];
      if (given.length > 3 || !area || typeof value !== "number" || typeof order !== "number") return undefined;
      return rankOf(sorted.of(area), value, order !== 0);
    });
  return made;
}
