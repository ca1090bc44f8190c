import { type Cell, isCellError } from "../../../cells/cell.ts";
import { NotWorkedOut } from "../../../workbook/formula/notWorkedOut.ts";
import type { Calling, WorksheetFunction } from "./evaluateFormula.ts";
import { numbersIn } from "./spreads.ts";
import { errorOf, type Grid, isGrid, isReference, type Value } from "./values.ts";

interface Finder {
  readonly find: (name: string) => WorksheetFunction | undefined;
}

const columnOf = (numbers: readonly number[]): Grid => ({ grid: numbers.map((one) => [one]) });

/** Of all arguments together, with the error where there is no number among them. */
const ofAll = {
  AVEDEV: "#NUM!",
  KURT: "#DIV/0!",
  MODE: "#N/A",
  "MODE.SNGL": "#N/A",
  SKEW: "#DIV/0!",
  "SKEW.P": "#DIV/0!",
} as const;

// The first argument is the sample, the others say what is asked of it.
const ofFirst = ["PERCENTRANK", "PERCENTRANK.EXC", "PERCENTRANK.INC", "TRIMMEAN", "IRR"] as const;

// The two arguments at these places go together, pair by pair.
const ofPairs = {
  CORREL: 0,
  COVAR: 0,
  "COVARIANCE.P": 0,
  "COVARIANCE.S": 0,
  FORECAST: 1,
  "FORECAST.LINEAR": 1,
  INTERCEPT: 0,
  PEARSON: 0,
  RSQ: 0,
  SLOPE: 0,
  STEYX: 0,
} as const;

// What these do with a text, TRUE or FALSE in a range is not known well enough.
const uncertain =
  "CHISQ.TEST CHITEST F.TEST FTEST GROWTH LINEST LOGEST MDETERM MINVERSE MIRR MMULT MODE.MULT PROB SERIESSUM T.TEST TREND TTEST XIRR XNPV Z.TEST ZTEST".split(
    " ",
  );

/** The cells of a range or an array, row by row. */
function cellsOf(value: Value | undefined, calling: Calling): readonly Cell[] {
  const grid = isReference(value) ? value.areas.flatMap((area) => calling.store.arrayCells(area)) : undefined;
  if (grid) return grid.flat();
  const content = calling.content(value);
  return isGrid(content) ? content.grid.flat() : [content];
}

/** Pairs in which both are numbers; an error among them is the answer. */
function pairsOf(one: readonly Cell[], other: readonly Cell[]): readonly [number[], number[]] | Cell {
  if (one.length !== other.length) return errorOf("#N/A");
  const error = [...one, ...other].find(isCellError);
  if (error) return error;
  const [left, right]: [number[], number[]] = [[], []];
  one.forEach((cell, index) => {
    const beside = other[index];
    if (typeof cell !== "number" || typeof beside !== "number") return;
    left.push(cell);
    right.push(beside);
  });
  return [left, right];
}

/**
 * Functions of the library that would count a text such as "3.50" in a range as a number, which no spreadsheet does:
 * they are given the numbers alone.
 */
export function numbersAlone({ find }: Finder): ReadonlyMap<string, WorksheetFunction> {
  const own = (name: string): WorksheetFunction => {
    const found = find(name);
    if (!found) throw new NotWorkedOut(`it uses ${name}, which is not worked out here`);
    return found;
  };
  const made = new Map<string, WorksheetFunction>();
  for (const [name, none] of Object.entries(ofAll))
    made.set(name, (given, calling) => {
      const numbers = numbersIn(given, false, calling);
      if (!Array.isArray(numbers)) return numbers;
      return numbers.length === 0 ? errorOf(none) : own(name)([columnOf(numbers)], calling);
    });
  for (const name of ofFirst)
    made.set(name, ([sample, ...asked], calling) => {
      const numbers = numbersIn([sample], false, calling);
      if (!Array.isArray(numbers)) return numbers;
      return numbers.length === 0 ? errorOf("#NUM!") : own(name)([columnOf(numbers), ...asked], calling);
    });
  for (const [name, from] of Object.entries(ofPairs))
    made.set(name, (given, calling) => {
      const pairs = pairsOf(cellsOf(given[from], calling), cellsOf(given[from + 1], calling));
      if (!Array.isArray(pairs)) return pairs as Cell;
      const [left, right] = pairs as [number[], number[]];
      if (left.length === 0) return errorOf("#DIV/0!");
      return own(name)([...given.slice(0, from), columnOf(left), columnOf(right)], calling);
    });
  made.set("NPV", ([rate, ...flows], calling) => {
    const numbers = numbersIn(flows, false, calling);
    if (!Array.isArray(numbers)) return numbers;
    return numbers.length === 0 ? errorOf("#VALUE!") : own("NPV")([rate, columnOf(numbers)], calling);
  });
  made.set("FREQUENCY", ([data, bins], calling) => {
    const [numbers, limits] = [numbersIn([data], false, calling), numbersIn([bins], false, calling)];
    if (!Array.isArray(numbers)) return numbers;
    if (!Array.isArray(limits)) return limits;
    if (numbers.length === 0 || limits.length === 0)
      throw new NotWorkedOut("what FREQUENCY gives without numbers is not certain");
    return own("FREQUENCY")([columnOf(numbers), columnOf(limits)], calling);
  });
  for (const name of uncertain)
    made.set(name, (given, calling) => {
      for (const value of given) {
        if (!isReference(value)) continue;
        if (cellsOf(value, calling).some((cell) => typeof cell === "string" || typeof cell === "boolean"))
          throw new NotWorkedOut(`what ${name} does with a text, TRUE or FALSE in a range is not certain`);
      }
      return own(name)(given, calling);
    });
  return made;
}
