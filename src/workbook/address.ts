import { lastColumn, lastRow } from "./limits.ts";

/** A cell, counted from 0. */
export interface Place {
  readonly row: number;
  readonly column: number;
}

/** A rectangle of cells, counted from 0, ends included. */
export interface Area {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

/**
 * Column letters of a column counted from 0.
 *
 * @example
 * columnLetters(27) // → "AB"
 */
export function columnLetters(column: number): string {
  let letters = "";
  for (let rest = column; rest >= 0; rest = Math.floor(rest / 26) - 1) {
    letters = String.fromCharCode(65 + (rest % 26)) + letters;
  }
  return letters;
}

export function columnNumber(letters: string): number {
  let column = 0;
  for (const letter of letters.toUpperCase()) column = column * 26 + letter.charCodeAt(0) - 64;
  return column - 1;
}

/** @example placeText({ row: 0, column: 27 }) // → "AB1" */
export const placeText = ({ row, column }: Place): string => `${columnLetters(column)}${row + 1}`;

/** @example areaText({ top: 0, left: 0, bottom: 1, right: 2 }) // → "A1:C2" */
export const areaText = ({ top, left, bottom, right }: Area): string =>
  top === bottom && left === right
    ? placeText({ row: top, column: left })
    : `${placeText({ row: top, column: left })}:${placeText({ row: bottom, column: right })}`;

/** A cell's place, or undefined when the text is none or lies outside a sheet. */
export function readPlace(text: string): Place | undefined {
  const key = addressKey(text, true);
  return key < 0 ? undefined : { row: Math.floor(key / lastColumn), column: key % lastColumn };
}

/**
 * The place of an address: its row times the columns of a sheet, and its column; -1 when the text is none. Every cell of
 * a file goes through it, and every word of a formula, so it walks the text once and makes nothing.
 *
 * @param signs - whether `$` may stand before the letters and before the digits; in a file no cell's own address has them
 */
export function addressKey(text: string, signs = false): number {
  if (text.length > (signs ? longestWithSigns : longestAddress)) return -1;
  let at = 0;
  let column = 0;
  if (signs && text.charCodeAt(at) === dollar) at += 1;
  for (; at < text.length; at += 1) {
    // In capitals.
    const letter = text.charCodeAt(at) & ~32;
    if (letter < 65 || letter > 90) break;
    column = column * 26 + letter - 64;
  }
  if (column === 0 || column > lastColumn) return -1;
  if (signs && text.charCodeAt(at) === dollar) at += 1;
  if (signs && text.length - at > mostDigits) return -1;
  let row = 0;
  for (; at < text.length; at += 1) {
    const digit = text.charCodeAt(at) - 48;
    if (digit < 0 || digit > 9) return -1;
    row = row * 10 + digit;
  }
  return row > 0 && row <= lastRow ? (row - 1) * lastColumn + column - 1 : -1;
}

/** XFD1048576 */
const longestAddress = 10;
const mostDigits = 7;
const longestWithSigns = longestAddress + 2;
const dollar = "$".charCodeAt(0);

export function readArea(text: string): Area | undefined {
  const [from = "", to = from] = text.split(":");
  const [first, last] = [readPlace(from), readPlace(to)];
  if (!first || !last) return undefined;
  return {
    top: Math.min(first.row, last.row),
    left: Math.min(first.column, last.column),
    bottom: Math.max(first.row, last.row),
    right: Math.max(first.column, last.column),
  };
}

export const isInside = ({ row, column }: Place, { top, left, bottom, right }: Area): boolean =>
  row >= top && row <= bottom && column >= left && column <= right;

export const overlap = (one: Area, other: Area): boolean =>
  one.top <= other.bottom && other.top <= one.bottom && one.left <= other.right && other.left <= one.right;

export const isOneCell = ({ top, left, bottom, right }: Area): boolean => top === bottom && left === right;
