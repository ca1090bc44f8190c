import { type Cell, isCellError } from "../../../cells/cell.ts";
import { sumOf } from "../../../core/statistics/sumOf.ts";
import type { Calling, WorksheetFunction } from "./evaluateFormula.ts";
import { numberOf } from "./operators.ts";
import { errorOf, isGrid, isReference, type Value } from "./values.ts";

/**
 * The numbers among arguments. Texts, TRUE and FALSE in cells are passed over; in the functions whose name ends in A a
 * text counts as 0 and TRUE as 1. What is typed into the formula counts as the number it can be read as.
 */
export function numbersIn(
  given: readonly (Value | undefined)[],
  withTexts: boolean,
  calling: Calling,
): number[] | Cell {
  const numbers: number[] = [];
  for (const value of given) {
    const cells = isReference(value)
      ? value.areas.flatMap((area) => calling.store.cells({ ...area, area: calling.store.filledPart(area) }))
      : undefined;
    const content = cells ? undefined : calling.content(value);
    const grid = cells ?? (isGrid(content) ? content.grid : undefined);
    const flat = grid ? grid.flat() : [content as Cell];
    calling.store.spend(flat.length);
    for (const cell of flat) {
      if (isCellError(cell)) return cell;
      if (typeof cell === "number") numbers.push(cell);
      else if (!grid) {
        const number = numberOf(cell, calling.toNumber);
        if (number === undefined) return errorOf("#VALUE!");
        numbers.push(number);
      } else if (withTexts && cell !== null) numbers.push(cell === true ? 1 : 0);
    }
  }
  return numbers;
}

/** The squares of the distances from the mean, added up. */
function squares(numbers: readonly number[]): number {
  const mean = sumOf(numbers) / numbers.length;
  return sumOf(numbers.map((one) => (one - mean) * (one - mean)));
}

const noDivision = errorOf("#DIV/0!");

const of =
  (compute: (numbers: readonly number[]) => Cell, withTexts = false): WorksheetFunction =>
  (given, calling) => {
    const numbers = numbersIn(given, withTexts, calling);
    if (!Array.isArray(numbers)) return numbers;
    const answer = compute(numbers);
    return typeof answer === "number" && !Number.isFinite(answer) ? errorOf("#NUM!") : answer;
  };

const ofSample = (numbers: readonly number[]): Cell =>
  numbers.length < 2 ? noDivision : squares(numbers) / (numbers.length - 1);
const ofAll = (numbers: readonly number[]): Cell =>
  numbers.length === 0 ? noDivision : squares(numbers) / numbers.length;
const root = (value: Cell): Cell => (typeof value === "number" ? Math.sqrt(value) : value);
const extreme = (numbers: readonly number[], sign: 1 | -1): Cell =>
  numbers.reduce((best, one) => (sign * one > sign * best ? one : best), numbers[0] ?? 0);

const middle = (numbers: readonly number[]): Cell => {
  if (numbers.length === 0) return errorOf("#NUM!");
  const sorted = [...numbers].sort((one, other) => one - other);
  const half = sorted.length >> 1;
  const upper = sorted[half] as number;
  return sorted.length % 2 === 1 ? upper : ((sorted[half - 1] as number) + upper) / 2;
};

/** A mean of numbers that are all above 0. */
const positiveMean =
  (compute: (numbers: readonly number[]) => number) =>
  (numbers: readonly number[]): Cell =>
    numbers.length === 0 || numbers.some((one) => one <= 0) ? errorOf("#NUM!") : compute(numbers);

/** Spreads and middles, and the functions that count texts as 0. */
export const spreads: ReadonlyMap<string, WorksheetFunction> = new Map<string, WorksheetFunction>([
  ...["VAR.S", "VAR"].map((name) => [name, of(ofSample)] as const),
  ...["VAR.P", "VARP"].map((name) => [name, of(ofAll)] as const),
  ...["STDEV.S", "STDEV"].map((name) => [name, of((numbers) => root(ofSample(numbers)))] as const),
  ...["STDEV.P", "STDEVP"].map((name) => [name, of((numbers) => root(ofAll(numbers)))] as const),
  ["VARA", of(ofSample, true)],
  ["VARPA", of(ofAll, true)],
  ["STDEVA", of((numbers) => root(ofSample(numbers)), true)],
  ["STDEVPA", of((numbers) => root(ofAll(numbers)), true)],
  ["MEDIAN", of(middle)],
  ["GEOMEAN", of(positiveMean((numbers) => Math.exp(sumOf(numbers.map(Math.log)) / numbers.length)))],
  ["HARMEAN", of(positiveMean((numbers) => numbers.length / sumOf(numbers.map((one) => 1 / one))))],
  ["DEVSQ", of((numbers) => (numbers.length === 0 ? errorOf("#NUM!") : squares(numbers)))],
  ["AVERAGEA", of((numbers) => (numbers.length === 0 ? noDivision : sumOf(numbers) / numbers.length), true)],
  ["MAXA", of((numbers) => extreme(numbers, 1), true)],
  ["MINA", of((numbers) => extreme(numbers, -1), true)],
]);
