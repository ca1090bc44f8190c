import { type Cell, isCellError } from "../../../cells/cell.ts";
import { wildcard } from "./criteria.ts";
import type { Calling, WorksheetFunction } from "./evaluateFormula.ts";
import { numberOf, textOf } from "./operators.ts";
import { errorOf, lift } from "./values.ts";

const noValue = errorOf("#VALUE!");
/** The longest text a cell can hold. */
const longest = 32_767;

type Each = (
  cells: readonly (Cell | undefined)[],
  number: (cell: Cell | undefined, otherwise: number) => number,
  spend: (cells: number) => void,
) => Cell;

/** A function of texts: numbers, blanks, TRUE and FALSE are read as the text they show. */
const ofTexts =
  (each: Each, least: number, most: number): WorksheetFunction =>
  (given, calling: Calling) => {
    if (given.length < least || given.length > most) return noValue;
    return lift(
      given.map((value) => calling.content(value)),
      (...cells) => {
        const error = cells.find(isCellError);
        if (error) return error;
        const answer = each(
          given.map((value, index) => (value === undefined ? undefined : (cells[index] ?? null))),
          (cell, otherwise) => (cell === undefined ? otherwise : (numberOf(cell, calling.toNumber) ?? Number.NaN)),
          (taken) => calling.store.spend(taken),
        );
        return typeof answer === "string" && answer.length > longest ? noValue : answer;
      },
    );
  };

const text = (cell: Cell | undefined): string => textOf(cell ?? null);

const proper = (written: string): string =>
  written.toLowerCase().replace(/\p{L}+/gu, (word) => word[0]?.toUpperCase() + word.slice(1));

function find(wanted: string, within: string, from: number): Cell {
  if (!(from >= 1) || Math.trunc(from) > within.length + (wanted === "" ? 1 : 0)) return noValue;
  const at = within.indexOf(wanted, Math.trunc(from) - 1);
  return at === -1 ? noValue : at + 1;
}

/** How many signs a pattern with `?`, `*` and `~` begins with before its first `*`, in a text and in the pattern. */
function beforeStar(pattern: string): { readonly signs: number; readonly end: number } {
  let signs = 0;
  let end = 0;
  while (end < pattern.length && pattern[end] !== "*") {
    end += pattern[end] === "~" && /[*?~]/.test(pattern[end + 1] ?? "") ? 2 : 1;
    signs += 1;
  }
  return { signs, end };
}

// What looking at one place of a text takes, in cells that are read; measured.
const perPlace = 5;

function search(wanted: string, within: string, from: number, spend: (cells: number) => void): Cell {
  if (!/[*?~]/.test(wanted)) return find(wanted.toLowerCase(), within.toLowerCase(), from);
  if (!(from >= 1) || Math.trunc(from) > within.length) return noValue;
  const { signs, end } = beforeStar(wanted);
  const begins = wildcard(wanted.slice(0, end), spend);
  const goesOn = wildcard(`${wanted.slice(end)}*`, spend);
  for (let at = Math.trunc(from) - 1; at < within.length; at += 1) {
    spend(perPlace);
    if (!begins(within.slice(at, at + signs))) continue;
    // What does not follow here follows nowhere further on, where there is less to follow.
    return goesOn(within.slice(at + signs)) ? at + 1 : noValue;
  }
  return noValue;
}

function substitute(written: string, old: string, fresh: string, nth: number | undefined): Cell {
  if (old === "") return written;
  // A replacement that is a function is called for each place, and one that is a text may not hold a `$`.
  if (nth === undefined) return written.split(old).join(fresh);
  if (!(nth >= 1)) return noValue;
  let at = -1;
  for (let count = 0; count < Math.trunc(nth); count += 1) {
    at = written.indexOf(old, at === -1 ? 0 : at + old.length);
    if (at === -1) return written;
  }
  return written.slice(0, at) + fresh + written.slice(at + old.length);
}

/** Functions of texts, which the library of the embedded spreadsheet does not read as a spreadsheet does. */
export const textFunctions: ReadonlyMap<string, WorksheetFunction> = new Map<string, WorksheetFunction>([
  ["LEN", ofTexts(([one]) => text(one).length, 1, 1)],
  ["UPPER", ofTexts(([one]) => text(one).toUpperCase(), 1, 1)],
  ["LOWER", ofTexts(([one]) => text(one).toLowerCase(), 1, 1)],
  ["PROPER", ofTexts(([one]) => proper(text(one)), 1, 1)],
  [
    "TRIM",
    ofTexts(
      ([one]) =>
        text(one)
          .replace(/^ +| +$/g, "")
          .replace(/ {2,}/g, " "),
      1,
      1,
    ),
  ],
  // The control signs are what CLEAN takes out.
  // biome-ignore lint/suspicious/noControlCharactersInRegex: see above
  ["CLEAN", ofTexts(([one]) => text(one).replace(/[\u0000-\u001f]/g, ""), 1, 1)],
  [
    "LEFT",
    ofTexts(
      ([one, count], number) => {
        const signs = number(count, 1);
        return signs >= 0 ? text(one).slice(0, Math.trunc(signs)) : noValue;
      },
      1,
      2,
    ),
  ],
  [
    "RIGHT",
    ofTexts(
      ([one, count], number) => {
        const signs = number(count, 1);
        const written = text(one);
        return signs >= 0 ? written.slice(Math.max(0, written.length - Math.trunc(signs))) : noValue;
      },
      1,
      2,
    ),
  ],
  [
    "MID",
    ofTexts(
      ([one, start, count], number) => {
        const [from, signs] = [Math.trunc(number(start, Number.NaN)), Math.trunc(number(count, Number.NaN))];
        return from >= 1 && signs >= 0 ? text(one).slice(from - 1, from - 1 + signs) : noValue;
      },
      3,
      3,
    ),
  ],
  ["FIND", ofTexts(([wanted, within, from], number) => find(text(wanted), text(within), number(from, 1)), 2, 3)],
  [
    "SEARCH",
    ofTexts(
      ([wanted, within, from], number, spend) => search(text(wanted), text(within), number(from, 1), spend),
      2,
      3,
    ),
  ],
  [
    "SUBSTITUTE",
    ofTexts(
      ([one, old, fresh, nth], number) =>
        substitute(text(one), text(old), text(fresh), nth === undefined ? undefined : number(nth, 1)),
      3,
      4,
    ),
  ],
  [
    "REPLACE",
    ofTexts(
      ([one, start, count, fresh], number) => {
        const [from, signs] = [Math.trunc(number(start, Number.NaN)), Math.trunc(number(count, Number.NaN))];
        if (!(from >= 1 && signs >= 0)) return noValue;
        const written = text(one);
        return written.slice(0, from - 1) + text(fresh) + written.slice(from - 1 + signs);
      },
      4,
      4,
    ),
  ],
  [
    "REPT",
    ofTexts(
      ([one, count], number) => {
        const times = Math.trunc(number(count, Number.NaN));
        if (!(times >= 0) || text(one).length * times > longest) return noValue;
        return text(one).repeat(times);
      },
      2,
      2,
    ),
  ],
  [
    "VALUE",
    ofTexts(
      ([one], number) => {
        const value = typeof one === "boolean" ? Number.NaN : number(one, Number.NaN);
        return Number.isNaN(value) ? noValue : value;
      },
      1,
      1,
    ),
  ],
  ["EXACT", ofTexts(([one, other]) => text(one) === text(other), 2, 2)],
  ["CONCATENATE", ofTexts((cells) => cells.map(text).join(""), 1, 255)],
]);
