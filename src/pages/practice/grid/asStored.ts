import { type Place, readPlace } from "../../../workbook/address.ts";
import { withoutPrefixes } from "../../../workbook/formula/functionName.ts";
import { tableAround } from "../../../workbook/formula/structured.ts";
import { isCall, joinTokens, type Token, tokenize } from "../../../workbook/formula/tokenize.ts";
import type { Table } from "../../../workbook/model.ts";

/**
 * A typed formula with what a file writes out and a person leaves out: the table and the row it stands in, the mark of
 * names that LET and LAMBDA give, and the function behind `A1#`.
 *
 * @param formula - without `=`
 * @param tables - those on its sheet
 * @example
 * asStored("LET(x,1,x+1)", [], { row: 0, column: 0 }) // → "LET(_xlpm.x,1,_xlpm.x+1)"
 */
export function asStored(formula: string, tables: readonly Table[], at: Place): string {
  const tokens = tokenize(formula);
  if (!tokens) return formula;
  const own = tableAround(tables, at)?.name ?? "";
  return joinTokens(withSpilledRanges(withTables(withParameters(tokens), own)));
}

function withTables(tokens: readonly Token[], own: string): readonly Token[] {
  return tokens.map((token, at) => {
    if (token.kind !== "bracket") return token;
    const table = tokens[at - 1]?.kind === "name" ? "" : own;
    return { ...token, text: table + withThisRow(token.text) };
  });
}

function withThisRow(bracket: string): string {
  const column = /^\[@(.*)\]$/s.exec(bracket)?.[1]?.trim();
  if (column === undefined) return bracket;
  if (column === "") return "[#This Row]";
  return `[[#This Row],${column.startsWith("[") ? column : `[${column}]`}]`;
}

function withSpilledRanges(tokens: readonly Token[]): readonly Token[] {
  const out: Token[] = [];
  for (const token of tokens) {
    if (token.text !== "#") {
      out.push(token);
      continue;
    }
    const from = out.at(-2)?.text === "!" ? -3 : -1;
    out.push({ kind: "name", text: `ANCHORARRAY(${joinTokens(out.splice(from))})` });
  }
  return out;
}

const parameterMark = "_xlpm.";

function withParameters(tokens: readonly Token[]): readonly Token[] {
  const out = [...tokens];
  for (const [at, token] of tokens.entries()) {
    const call = withoutPrefixes(token.text).toUpperCase();
    if (!isCall(tokens, at) || (call !== "LET" && call !== "LAMBDA")) continue;
    const { parts, end } = argumentsOf(tokens, at + 1);
    const naming = parts.slice(0, -1).filter((_, index) => call === "LAMBDA" || index % 2 === 0);
    const names = new Set(naming.flatMap(nameIn));
    for (let inside = at + 2; inside < end; inside += 1) {
      const { kind, text } = tokens[inside] as Token;
      const isReference = tokens[inside - 1]?.text === "!" || tokens[inside + 1]?.text === "!";
      if (kind === "name" && !isReference && names.has(text.toLowerCase()))
        out[inside] = { kind, text: parameterMark + text };
    }
  }
  return out;
}

/** The name that an argument consists of, in small letters. */
function nameIn(part: readonly Token[]): readonly string[] {
  const [only, ...others] = part.filter(({ kind }) => kind !== "space");
  const isName = only?.kind === "name" && others.length === 0 && !readPlace(only.text);
  return isName && !only.text.startsWith(parameterMark) ? [only.text.toLowerCase()] : [];
}

function argumentsOf(tokens: readonly Token[], open: number): { parts: readonly (readonly Token[])[]; end: number } {
  const parts: Token[][] = [[]];
  let depth = 0;
  for (let at = open; at < tokens.length; at += 1) {
    const token = tokens[at] as Token;
    if (token.kind === "close") depth -= 1;
    if (depth === 0 && at > open) return { parts, end: at };
    if (depth === 1 && token.kind === "separator") parts.push([]);
    else if (at > open) parts.at(-1)?.push(token);
    if (token.kind === "open") depth += 1;
  }
  return { parts, end: tokens.length };
}
