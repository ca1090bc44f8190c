import { type Cell, isCellError } from "../../../cells/cell.ts";
import type { Operator } from "../../../workbook/formula/parseFormula.ts";
import { numberText } from "./numberText.ts";
import { errorOf } from "./values.ts";

export type ToNumber = (text: string) => number | undefined;

/** What a cell counts as where a number is wanted; undefined where its text is none. */
export function numberOf(cell: Cell, toNumber: ToNumber): number | undefined {
  if (typeof cell === "number") return cell;
  if (cell === null) return 0;
  if (typeof cell === "boolean") return cell ? 1 : 0;
  return typeof cell === "string" ? toNumber(cell) : undefined;
}

export function textOf(cell: Cell): string {
  if (typeof cell === "string") return cell;
  if (cell === null) return "";
  if (typeof cell === "boolean") return cell ? "TRUE" : "FALSE";
  return isCellError(cell) ? cell.error : numberText(cell);
}

const noNumber = errorOf("#VALUE!");
const finite = (value: number): Cell => (Number.isFinite(value) ? value + 0 : errorOf("#NUM!"));

// A difference of less than this share is what the binary digits leave over, and spreadsheets make it 0.
const leftOver = 2 ** -48;

function sum(one: number, other: number): number {
  const total = one + other;
  return Math.abs(total) < Math.min(Math.abs(one), Math.abs(other)) * leftOver ? 0 : total;
}

/** Whether two numbers are the same to the 15 digits that a spreadsheet shows. */
export function sameNumber(one: number, other: number): boolean {
  if (one === other) return true;
  if (Math.abs(one - other) > Math.max(Math.abs(one), Math.abs(other)) * 1e-14) return false;
  return one.toPrecision(15) === other.toPrecision(15);
}

const collator = new Intl.Collator("en", { sensitivity: "accent" });
const sameText = (one: string, other: string): boolean => one === other || one.toLowerCase() === other.toLowerCase();

const rank = (cell: Cell): number => (typeof cell === "number" ? 0 : typeof cell === "string" ? 1 : 2);

const blankLike = (other: Cell): Cell => (typeof other === "string" ? "" : typeof other === "boolean" ? false : 0);

/** Below 0, 0 or above 0: numbers come before texts, texts before TRUE and FALSE. */
export function compareCells(one: Cell, other: Cell): number {
  const left = one === null ? blankLike(other) : one;
  const right = other === null ? blankLike(left) : other;
  if (typeof left === "number" && typeof right === "number") return sameNumber(left, right) ? 0 : left < right ? -1 : 1;
  if (typeof left === "string" && typeof right === "string")
    return sameText(left, right) ? 0 : collator.compare(left, right) || (left < right ? -1 : 1);
  if (typeof left === "boolean" && typeof right === "boolean") return Number(left) - Number(right);
  return rank(left) - rank(right);
}

/** Whether two cells are equal; texts without putting them in order, which takes longer. */
function sameCells(one: Cell, other: Cell): boolean {
  if (typeof one === "number" && typeof other === "number") return sameNumber(one, other);
  if (typeof one === "string" && typeof other === "string") return sameText(one, other);
  return compareCells(one, other) === 0;
}

/** `left operator right` for single cells. */
export function operate(operator: Operator, left: Cell, right: Cell, toNumber: ToNumber): Cell {
  if (isCellError(left)) return left;
  if (isCellError(right)) return right;
  switch (operator) {
    case "&":
      return textOf(left) + textOf(right);
    case "=":
      return sameCells(left, right);
    case "<>":
      return !sameCells(left, right);
    case "<":
      return compareCells(left, right) < 0;
    case ">":
      return compareCells(left, right) > 0;
    case "<=":
      return compareCells(left, right) <= 0;
    case ">=":
      return compareCells(left, right) >= 0;
    default:
      return arithmetic(operator, numberOf(left, toNumber), numberOf(right, toNumber));
  }
}

function arithmetic(operator: "+" | "-" | "*" | "/" | "^", one?: number, other?: number): Cell {
  if (one === undefined || other === undefined) return noNumber;
  switch (operator) {
    case "+":
      return finite(sum(one, other));
    case "-":
      return finite(sum(one, -other));
    case "*":
      return finite(one * other);
    case "/":
      return other === 0 ? errorOf("#DIV/0!") : finite(one / other);
    case "^":
      if (one === 0 && other === 0) return errorOf("#NUM!");
      return one === 0 && other < 0 ? errorOf("#DIV/0!") : finite(one ** other);
  }
}
