import { type Cell, isCellError } from "../../../cells/cell.ts";
import { NotWorkedOut } from "../../../workbook/formula/notWorkedOut.ts";
import { compareCells, sameNumber } from "./operators.ts";

export interface Criterion {
  readonly fits: (cell: Cell) => boolean;
  /** Blank cells fit, so that those below the filled part of a range count. */
  readonly fitsBlank: boolean;
  /** For "equal to" without wildcards: what to look up. */
  readonly keys: readonly string[] | undefined;
  /** For "less" and "more" than a number: which numbers in order are the first that fit and the first that do not. */
  readonly bound?: { readonly passes: (number: number) => boolean; readonly fitsBefore: boolean };
}

type Spend = (cells: number) => void;

/** So many signs of a text are held against a pattern while a cell is read; measured. */
const stepsPerCell = 20;

const withSign = /^(<>|<=|>=|<|>|=)([\s\S]*)$/;

/** Texts by which equal cells are found: a text that is a number is found by the text and, apart, by the number. */
export function keysOf(cell: Cell): readonly string[] {
  if (typeof cell === "number") return [`n${digitsOf(cell)}`];
  if (typeof cell === "boolean") return [`b${cell}`];
  if (typeof cell !== "string") return [];
  const text = `t${cell.toLowerCase()}`;
  return numberLike.test(cell) ? [text, `q${digitsOf(Number(cell))}`] : [text];
}

/** A number with the digits that a spreadsheet compares; a whole number has no more, and most are whole. */
const digitsOf = (value: number): number =>
  Number.isInteger(value) && Math.abs(value) < 1e15 ? value : Number(value.toPrecision(15));

/**
 * Reads a criterion of COUNTIF and its kin (ECMA-376 part 1, 18.17.7.49 COUNTIF): a value, or a text with a sign before
 * it, with `?`, `*` and `~` as wildcards. A text that is a number fits the number, however it is written.
 *
 * @param spend - told what is spent on wildcards beyond looking at a cell
 */
export function readCriterion(
  criterion: Cell,
  toNumber: (text: string) => number | undefined,
  spend?: Spend,
): Criterion {
  if (criterion === null) return equalTo(0);
  if (isCellError(criterion)) {
    const { error } = criterion;
    return { fits: (cell) => isCellError(cell) && cell.error === error, fitsBlank: false, keys: undefined };
  }
  if (typeof criterion !== "string") return equalTo(criterion);
  const [, sign = "", rest = criterion] = withSign.exec(criterion) ?? [];
  if (rest === "") return ofNothing(sign);
  const number = toNumber(rest);
  const value: Cell = number ?? (/^(?:true|false)$/i.test(rest) ? /^true$/i.test(rest) : rest);
  if (sign === "" || sign === "=") return equalTo(value, rest, spend);
  if (sign === "<>") {
    const { fits } = equalTo(value, rest, spend);
    return { fits: (cell) => !fits(cell), fitsBlank: true, keys: undefined };
  }
  return inOrder(sign, value);
}

function ofNothing(sign: string): Criterion {
  const isNothing = (cell: Cell): boolean => cell === null || cell === "";
  if (sign === "") return { fits: isNothing, fitsBlank: true, keys: undefined };
  if (sign === "=") return { fits: (cell) => cell === null, fitsBlank: true, keys: undefined };
  if (sign === "<>") return { fits: (cell) => cell !== null, fitsBlank: false, keys: undefined };
  throw new NotWorkedOut(`what fits a criterion of "${sign}" alone is answered in different ways by spreadsheets`);
}

function equalTo(value: Cell, written?: string, spend?: Spend): Criterion {
  if (typeof value === "number") {
    // A day or a share written as a text fits the same text in a cell.
    const lower = written === undefined || numberLike.test(written) ? undefined : written.toLowerCase();
    const fits = (cell: Cell): boolean =>
      typeof cell === "number"
        ? sameNumber(cell, value)
        : typeof cell === "string" &&
          ((numberLike.test(cell) && Number(cell) === value) || (lower !== undefined && cell.toLowerCase() === lower));
    const digits = digitsOf(value);
    const keys = [`n${digits}`, `q${digits}`, ...(lower === undefined ? [] : [`t${lower}`])];
    return { fits, fitsBlank: false, keys };
  }
  if (typeof value === "boolean") return { fits: (cell) => cell === value, fitsBlank: false, keys: [`b${value}`] };
  const text = written ?? String(value);
  if (!/[*?~]/.test(text)) {
    const lower = text.toLowerCase();
    return {
      fits: (cell) => typeof cell === "string" && (cell === text || cell.toLowerCase() === lower),
      fitsBlank: false,
      keys: [`t${lower}`],
    };
  }
  const fits = wildcard(text, spend);
  return { fits: (cell) => typeof cell === "string" && fits(cell), fitsBlank: false, keys: undefined };
}

const numberLike = /^\s*[+-]?(?:\d{1,15}(?:\.\d{0,15})?|\.\d{1,15})(?:[eE][+-]?\d{1,3})?\s*$/;

function inOrder(sign: string, value: Cell): Criterion {
  const holds = {
    "<": (order: number) => order < 0,
    ">": (order: number) => order > 0,
    "<=": (order: number) => order <= 0,
    ">=": (order: number) => order >= 0,
  }[sign] as (order: number) => boolean;
  const fitsBefore = sign.startsWith("<");
  const passes = (number: number): boolean => holds(compareCells(number, value)) !== fitsBefore;
  return {
    fits: (cell) =>
      typeof cell === typeof value && !isCellError(cell) && cell !== null && holds(compareCells(cell, value)),
    fitsBlank: false,
    keys: undefined,
    ...(typeof value === "number" && { bound: { passes, fitsBefore } }),
  };
}

/**
 * Whether texts fit a pattern of `?` (one sign), `*` (any) and `~` (the next sign as it is), small and capital letters
 * alike. Goes back to the last `*` only, so that no pattern takes longer than the lengths multiplied.
 *
 * @param spend - told what each text takes, in cells that are read
 */
export function wildcard(pattern: string, spend?: Spend): (text: string) => boolean {
  const signs: (string | undefined)[] = [];
  const many: boolean[] = [];
  for (let at = 0; at < pattern.length; at += 1) {
    const sign = pattern[at] as string;
    const escaped = sign === "~" && /[*?~]/.test(pattern[at + 1] ?? "");
    if (escaped) at += 1;
    many.push(!escaped && sign === "*");
    signs.push(!escaped && (sign === "?" || sign === "*") ? undefined : (pattern[at] as string).toLowerCase());
  }
  return (written) => {
    const text = written.toLowerCase();
    let at = 0;
    let place = 0;
    let star = -1;
    let mark = 0;
    let steps = 0;
    const end = (fits: boolean): boolean => {
      spend?.(1 + steps / stepsPerCell);
      return fits;
    };
    while (at < text.length) {
      steps += 1;
      if (place < signs.length && !many[place] && (signs[place] === undefined || signs[place] === text[at])) {
        at += 1;
        place += 1;
      } else if (many[place]) {
        star = place;
        mark = at;
        place += 1;
      } else if (star !== -1) {
        place = star + 1;
        mark += 1;
        at = mark;
      } else return end(false);
    }
    while (many[place]) place += 1;
    return end(place === signs.length);
  };
}
