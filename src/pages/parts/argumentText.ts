import type { Cell } from "../../cells/cell.ts";
import { momentFromText } from "../../cells/day.ts";
import { numberIn } from "../../cells/numberIn.ts";
import { Problem } from "../../cells/problem.ts";
import { dateFormula, literal } from "../../definition/exampleInSheet.ts";
import { Refusal } from "../../reading/kind.ts";
import type { Parameter } from "../../reading/parameter.ts";
import { isCall, type Token, tokenize } from "../../workbook/formula/tokenize.ts";
import { words } from "../words.ts";

/**
 * What a person typed for one argument, as it stands in the formula: cells and names as they are, words in quotes,
 * dates so that no spreadsheet takes them for another day.
 *
 * @param typed - cells, a value, or a formula after `=`
 * @returns the piece of the formula; "" where the argument is left out
 * @throws Problem that says what is wrong with it and how to mend it
 * @example
 * argumentText(tagParameter, "042") // → '"042"'
 * argumentText(dateParameter, "2026-03-14") // → "DATE(2026,3,14)"
 */
export function argumentText(parameter: Parameter<unknown>, typed: string): string {
  const text = typed.trim();
  if (text === "" || text === "=") {
    if (parameter.optional) return "";
    throw new Problem(words.formula.missing(parameter.kind.wanted));
  }
  if (text.startsWith("=")) return oneExpression(text.slice(1).trim());
  if (isReference(text) || /^".*"$/s.test(text)) return oneExpression(text);
  if (parameter.shape === "block") return blockText(text);
  return (typedAs[parameter.kind.holds] ?? asText)(parameter, text);
}

type Reader = (parameter: Parameter<unknown>, text: string) => string;

const asText: Reader = (parameter, text) => {
  const word = parameter.kind.words?.find((known) => known.toLowerCase() === text.toLowerCase()) ?? text;
  return literal(checked(parameter, word) as string);
};

const typedAs: Readonly<Partial<Record<Parameter<unknown>["kind"]["holds"], Reader>>> = {
  number(parameter, text) {
    const share = /^(.+)%$/.exec(text);
    const value = numberIn(share?.[1] ?? text);
    if (value !== undefined) {
      checked(parameter, share ? value / 100 : value);
      return text;
    }
    return isExpression(text) ? oneExpression(text) : String(checked(parameter, text));
  },
  date(parameter, text) {
    const moment = momentFromText(text);
    if (moment !== undefined) return dateFormula(checked(parameter, moment) as number);
    if (!isExpression(text)) throw new Problem(words.formula.noDate(text));
    return oneExpression(text);
  },
  "yes/no"(parameter, text) {
    if (isExpression(text)) return oneExpression(text);
    checked(parameter, text);
    return parameter.kind.read(text, { dayOffset: 0 }) === true ? "TRUE" : "FALSE";
  },
  // Digits that would not come back as they were typed are a tag or a code, which a number would spoil.
  anything: (_, text) => (String(numberIn(text)) === text || isExpression(text) ? oneExpression(text) : literal(text)),
};

/** The value itself, once the function's own reader has taken it. */
function checked(parameter: Parameter<unknown>, cell: Cell): Cell {
  try {
    parameter.kind.read(cell, { dayOffset: 0 });
    return cell;
  } catch (error) {
    throw error instanceof Refusal ? new Problem(error.message) : error;
  }
}

function blockText(text: string): string {
  if (numberIn(text) === undefined && !isExpression(text)) throw new Problem(words.formula.noRange(text));
  return oneExpression(text);
}

const sheetPart = String.raw`(?:'(?:[^']|'')+'!|[\p{L}_][\p{L}\p{N}_.]*!)?`;
const cellPart = String.raw`\$?[A-Z]{1,3}\$?[1-9]\d{0,6}`;
const cells = new RegExp(`^${sheetPart}${cellPart}(?::${cellPart}|#)?$`, "iu");
const columns = new RegExp(String.raw`^${sheetPart}\$?[A-Z]{1,3}:\$?[A-Z]{1,3}$`, "iu");
const tableColumn = /^[\p{L}_][\p{L}\p{N}_.]*\[.+\]$/u;

const isReference = (text: string): boolean => [cells, columns, tableColumn].some((pattern) => pattern.test(text));

// A sum of numbers alone is a slip (14/3/2026), and so are words; an expression calls a function or names cells: TODAY(), A2*2.
const isExpression = (text: string): boolean => {
  const solid = (tokenize(text) ?? []).filter(({ kind }) => kind !== "space");
  return (
    solid.some((token, at) => token.kind === "bracket" || isReference(token.text) || isCall(solid, at)) &&
    solid.every((token, at) => !isOperand(token) || !isOperand(solid[at + 1]))
  );
};

const isOperand = (token: Token | undefined): boolean =>
  token !== undefined && ["name", "number", "text"].includes(token.kind);

function oneExpression(text: string): string {
  const tokens = tokenize(text);
  let depth = 0;
  for (const { kind } of tokens ?? []) {
    if (kind === "open") depth += 1;
    if (kind === "close") depth -= 1;
    if (depth < 0) break;
    if (kind === "separator" && depth === 0) throw new Problem(words.formula.manyParts(text));
  }
  if (tokens === undefined || tokens.length === 0 || depth !== 0) throw new Problem(words.formula.unreadable(text));
  return text;
}
