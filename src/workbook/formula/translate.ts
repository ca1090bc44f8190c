import { type Place, readPlace } from "../address.ts";
import type { DefinedName, Table } from "../model.ts";
import { dateShift } from "./dateShift.ts";
import { footName, isForCalc, typedFootName, withoutPrefixes } from "./functionName.ts";
import { CertainError, NotWorkedOut } from "./notWorkedOut.ts";
import { shiftTokens } from "./shiftFormula.ts";
import { fixedArea, quoteSheet, structuredArea, type TableOnSheet, tableAround, unquoteSheet } from "./structured.ts";
import { isCall, nextSolid, type Token, tokenize } from "./tokenize.ts";

/** What a formula may refer to. */
export interface Surroundings {
  readonly sheets: readonly { readonly name: string; readonly tables: readonly Table[] }[];
  readonly sheetByName: ReadonlyMap<string, number>;
  readonly names: ReadonlyMap<string, readonly DefinedName[]>;
  readonly tables: ReadonlyMap<string, TableOnSheet>;
  readonly date1904: boolean;
  readonly knows: (functionName: string) => boolean;
  readonly footNames: ReadonlySet<string>;
}

/** What a formula is, wherever in its column it stands. */
export interface FormulaTraits {
  readonly calls: readonly string[];
  /** It calls a FOOT function. */
  readonly foot: boolean;
  /** It names one as LibreOffice does, where an array is as long as it was entered. */
  readonly forCalc: boolean;
  /** It calls a function that fills more than one cell, so the result may spill. */
  readonly dynamic: boolean;
}

export interface Translation {
  /** In the engine's spelling, with `=`. */
  readonly formula: string;
  readonly traits: FormulaTraits;
}

/** The longest formula a cell can hold; names put in place may make it longer, but not without end. */
const longest = 8192 * 8;

/** Names that rest on names; each level is a call within a call, and no workbook needs so many. */
const deepestNames = 200;

const dynamicCalls: ReadonlySet<string> = new Set(
  `ANCHORARRAY BYCOL BYROW CHOOSECOLS CHOOSEROWS DROP EXPAND FILTER GROUPBY HSTACK LAMBDA LET MAKEARRAY MAP PIVOTBY
   RANDARRAY SCAN SEQUENCE SORT SORTBY TAKE TEXTSPLIT TOCOL TOROW UNIQUE VSTACK WRAPCOLS WRAPROWS XLOOKUP`.split(/\s+/),
);

/**
 * A stored formula in the spelling of the engine: prefixes gone, FOOT functions by their typed names, names and
 * structured references replaced by the cells they stand for, `A1#` as a call.
 *
 * @param formula - as stored, without `=`
 * @param at - where the formula stands
 * @throws NotWorkedOut with the reason
 */
export function translate(formula: string, sheet: number, at: Place, around: Surroundings): Translation {
  const state: State = { around, at, calls: [], foot: false, forCalc: false, dynamic: false, length: 0 };
  const text = translateText(formula, sheet, state, []);
  const { calls, foot, forCalc, dynamic } = state;
  return { formula: `=${text}`, traits: { calls, foot, forCalc, dynamic } };
}

interface State {
  readonly around: Surroundings;
  readonly at: Place;
  /** Each once; there are not many functions. */
  readonly calls: string[];
  foot: boolean;
  forCalc: boolean;
  dynamic: boolean;
  length: number;
}

function translateText(formula: string, sheet: number, state: State, inside: readonly string[]): string {
  if (formula.length > longest) throw new NotWorkedOut("it is longer than a formula can be");
  const tokens = tokenize(formula);
  if (!tokens) throw new NotWorkedOut("the formula cannot be read");
  return translateTokens(tokens, sheet, state, inside);
}

function translateTokens(tokens: readonly Token[], sheet: number, state: State, inside: readonly string[]): string {
  const out: string[] = [];
  const dates = dateShift(state.around.date1904);
  let at = 0;
  while (at < tokens.length) {
    const token = tokens[at] as Token;
    const prefixed = readSheetPrefix(tokens, at, state);
    const nth = nthCell(tokens, at, sheet, state);
    if (prefixed) {
      const target = tokens[prefixed.next];
      at = prefixed.next + 1;
      out.push(referenceOn(prefixed.sheet, target, tokens, at, state, inside));
      if (tokens[at]?.kind === "bracket") at += 1;
    } else if (nth !== undefined) {
      out.push(nth);
      at += nthTokens;
    } else if (isCall(tokens, at)) {
      const call = callOf(token.text, sheet, state);
      out.push(dates.called(call) + call);
      at += 1;
    } else if (token.kind === "name" && tokens[at + 1]?.kind === "bracket") {
      out.push(structured(token.text, tokens[at + 1]?.text ?? "", sheet, state));
      at += 2;
    } else if (token.kind === "operator" && token.text === "#") {
      out.push(`ANCHORARRAY(${out.pop() ?? ""})`);
      state.dynamic = true;
      at += 1;
    } else {
      out.push(dates.piece(token, plainPiece(token, tokens, at, sheet, state, inside)));
      at += 1;
    }
    state.length += (out.at(-1) ?? "").length;
    if (state.length > longest) throw new NotWorkedOut("its names grow beyond what a formula can hold");
  }
  return out.join("");
}

// INDEX ( Table [Column] , n )
const nthTokens = 7;

/**
 * The cell that `INDEX(Table[Column],n)` stands for, undefined where the formula does not go on so. Rows that are worked
 * out beside a table are full of it, and the engine would keep the whole column in memory for each.
 */
function nthCell(tokens: readonly Token[], at: number, sheet: number, state: State): string | undefined {
  if (tokens[at]?.text !== "INDEX") return undefined;
  const [, open, table, column, separator, nth, close] = tokens.slice(at, at + nthTokens);
  if (open?.text !== "(" || table?.kind !== "name" || column?.kind !== "bracket") return undefined;
  if (separator?.text !== "," || nth?.kind !== "number" || close?.text !== ")") return undefined;
  const found = state.around.tables.get(table.text.toLowerCase());
  const area = found && structuredArea(found.table, column.text, state.at);
  const row = area ? area.top + Number(nth.text) - 1 : -1;
  if (!found || !area || area.left !== area.right || !Number.isInteger(row) || row < area.top || row > area.bottom)
    return undefined;
  addCall("INDEX", state);
  return onSheet(found.sheet, sheet, state) + fixedArea({ ...area, top: row, bottom: row });
}

function plainPiece(
  token: Token,
  tokens: readonly Token[],
  at: number,
  sheet: number,
  state: State,
  inside: readonly string[],
): string {
  switch (token.kind) {
    case "space":
      return " ";
    case "number":
      // More digits than a number keeps would be read as text by the engine.
      return token.text.length > 15 ? String(Number(token.text)).toUpperCase() : token.text;
    case "bracket":
      return bareBracket(token.text, sheet, state);
    case "name":
      return nameOf(token.text, tokens, at, sheet, state, inside);
    default:
      return token.text;
  }
}

function addCall(name: string, { calls }: State): void {
  if (!calls.includes(name)) calls.push(name);
}

function callOf(written: string, sheet: number, state: State): string {
  const foot = footName(written);
  if (foot !== undefined) {
    if (!state.around.footNames.has(foot)) throw new CertainError(`there is no function ${typedFootName(foot)}`);
    const typed = typedFootName(foot);
    addCall(typed, state);
    state.foot = true;
    state.forCalc ||= isForCalc(written);
    return typed;
  }
  const name = withoutPrefixes(written).toUpperCase();
  if (findName(written, sheet, state.around)) throw new NotWorkedOut(`it calls the name ${written} as a function`);
  if (!state.around.knows(name)) throw new NotWorkedOut(`it uses ${name}, which is not worked out here`);
  addCall(name, state);
  if (dynamicCalls.has(name)) state.dynamic = true;
  return name === "SINGLE" ? "@" : name;
}

const oneCell = /^\$?[A-Z]{1,3}\$?\d+$/i;

/** `Sheet1!`, `'Sale check'!`; what belongs to another workbook is not worked out. */
function readSheetPrefix(
  tokens: readonly Token[],
  at: number,
  state: State,
): { sheet: number; next: number } | undefined {
  const token = tokens[at];
  if ((token?.kind !== "name" && token?.kind !== "quoted") || tokens[at + 1]?.text !== "!") return undefined;
  const name = unquoteSheet(token.text);
  if (name.includes("[")) throw new NotWorkedOut("it refers to another workbook");
  if (tokens[at - 1]?.text === ":") {
    const [begin = "", end = ""] = [tokens[at - 2]?.text, tokens[at + 2]?.text];
    throw new NotWorkedOut(
      oneCell.test(begin)
        ? `a range in it names a sheet at its end, ${begin}:${token.text}!${end}`
        : "it refers to the same cell on several sheets",
    );
  }
  const sheet = state.around.sheetByName.get(name.toLowerCase());
  if (sheet === undefined) {
    throw new NotWorkedOut(
      name.includes(":")
        ? "it refers to the same cell on several sheets"
        : `it refers to a sheet ${name}, which is not there`,
    );
  }
  return { sheet, next: at + 2 };
}

function referenceOn(
  sheet: number,
  target: Token | undefined,
  tokens: readonly Token[],
  after: number,
  state: State,
  inside: readonly string[],
): string {
  const name = state.around.sheets[sheet]?.name ?? "";
  if (target === undefined) throw new NotWorkedOut("the formula cannot be read");
  if (target.kind === "error") return target.text;
  if (target.kind === "name" && tokens[after]?.kind === "bracket")
    return structured(target.text, tokens[after]?.text ?? "", sheet, state);
  if (target.kind === "name" && !isReference(target.text, tokens, after - 1)) {
    const named = nameOf(target.text, tokens, after - 1, sheet, state, inside);
    // A name the workbook does not hold stays as it is, and the engine says #NAME?.
    if (named !== target.text) return named;
  }
  return quoteSheet(name) + target.text;
}

function bareBracket(text: string, sheet: number, state: State): string {
  if (/^\[\d+\]$/.test(text) || /^\[[^\]]*\.[^\]]*\]$/.test(text))
    throw new NotWorkedOut("it refers to another workbook");
  const table = tableAround(state.around.sheets[sheet]?.tables ?? [], state.at);
  return table ? structured(table.name, text, sheet, state) : "#REF!";
}

function structured(name: string, bracket: string, sheet: number, state: State): string {
  const found = state.around.tables.get(name.toLowerCase());
  if (!found) throw new NotWorkedOut(`it refers to a table ${name}, which is not there`);
  const area = structuredArea(found.table, bracket, state.at);
  if (!area) return "#REF!";
  return onSheet(found.sheet, sheet, state) + fixedArea(area);
}

const onSheet = (target: number, sheet: number, { around }: State): string =>
  target === sheet ? "" : quoteSheet(around.sheets[target]?.name ?? "");

const columnOnly = /^\$?[A-Za-z]{1,3}$/;

function isReference(text: string, tokens: readonly Token[], at: number): boolean {
  if (readPlace(text)) return true;
  return columnOnly.test(text) && (tokens[at + 1]?.text === ":" || tokens[at - 1]?.text === ":");
}

function nameOf(
  text: string,
  tokens: readonly Token[],
  at: number,
  sheet: number,
  state: State,
  inside: readonly string[],
): string {
  if (/^_xlpm\./i.test(text)) return withoutPrefixes(text);
  if (isReference(text, tokens, at)) return text;
  const name = findName(text, sheet, state.around);
  if (name) return namedFormula(name, sheet, state, inside);
  const table = state.around.tables.get(text.toLowerCase());
  if (table && tokens[nextSolid(tokens, at + 1)]?.text !== "!") return structured(text, "", sheet, state);
  return text;
}

/** A name of the sheet goes before one of the workbook. */
function findName(text: string, sheet: number, { names }: Surroundings): DefinedName | undefined {
  const candidates = names.get(text.toLowerCase());
  return candidates?.find((name) => name.sheet === sheet) ?? candidates?.find((name) => name.sheet === undefined);
}

function namedFormula(name: DefinedName, sheet: number, state: State, inside: readonly string[]): string {
  const key = `${name.sheet ?? ""}!${name.name.toLowerCase()}`;
  if (inside.includes(key)) throw new NotWorkedOut(`the name ${name.name} refers to itself`);
  if (inside.length >= deepestNames)
    throw new NotWorkedOut(`its names rest on one another more than ${deepestNames} deep`);
  if (name.text.length > longest) throw new NotWorkedOut(`the name ${name.name} is longer than a formula can be`);
  const tokens = tokenize(name.text.trim());
  if (!tokens) throw new NotWorkedOut(`the name ${name.name} cannot be read`);
  // Relative references in a name are kept as seen from A1.
  const moved = shiftTokens(tokens, state.at.row, state.at.column);
  const text = translateTokens(moved, name.sheet ?? sheet, state, [...inside, key]);
  const oneThing = moved.every(({ kind, text: piece }) => kind !== "operator" || piece === "!" || piece === ":");
  return oneThing ? text : `(${text})`;
}
