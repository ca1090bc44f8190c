import type { Cell, ErrorCode } from "../../cells/cell.ts";
import { type Area, readPlace } from "../address.ts";
import { areaBetween } from "./referencesIn.ts";
import { unquoteSheet } from "./structured.ts";
import { type Token, tokenize } from "./tokenize.ts";

export type Operator = "+" | "-" | "*" | "/" | "^" | "&" | "=" | "<>" | "<" | ">" | "<=" | ">=";

/** Cells that a formula names. */
export interface AreaNode {
  readonly kind: "area";
  readonly sheet: number;
  readonly area: Area;
  /** Which of its ends are rows without `$`, which go along where the formula is copied down; undefined for none. */
  readonly moving: { readonly top: boolean; readonly bottom: boolean } | undefined;
}

/** A formula as a tree. */
export type FormulaNode =
  | { readonly kind: "constant"; readonly value: Cell }
  | { readonly kind: "array"; readonly rows: readonly (readonly Cell[])[] }
  | AreaNode
  | { readonly kind: "name"; readonly name: string }
  | { readonly kind: "sign"; readonly sign: "-" | "+" | "@"; readonly of: FormulaNode }
  | { readonly kind: "percent"; readonly of: FormulaNode }
  | { readonly kind: "operation"; readonly operator: Operator; readonly left: FormulaNode; readonly right: FormulaNode }
  | {
      readonly kind: "references";
      readonly by: "range" | "union" | "intersection";
      readonly left: FormulaNode;
      readonly right: FormulaNode;
    }
  | { readonly kind: "call"; readonly name: string; readonly given: readonly (FormulaNode | undefined)[] }
  | { readonly kind: "invoke"; readonly of: FormulaNode; readonly given: readonly (FormulaNode | undefined)[] };

/** It is no formula; the message says why. */
export class NoFormula extends Error {
  override readonly name = "NoFormula";
}

// Negation goes before the power: -2^2 is 4, as in every spreadsheet.
const strength: Readonly<Record<Operator, number>> = {
  "=": 1,
  "<>": 1,
  "<": 1,
  ">": 1,
  "<=": 1,
  ">=": 1,
  "&": 2,
  "+": 3,
  "-": 3,
  "*": 4,
  "/": 4,
  "^": 5,
};

const isOperator = (text: string): text is Operator => text in strength;

// A tree is walked by calls within calls; measured, 1,500 levels and more are safe with the stack that Node gives.
const deepest = 400;

/**
 * Reads a formula in the engine's spelling.
 *
 * @param formula - with `=`
 * @param sheet - the sheet it stands in
 * @throws NoFormula
 */
export function parseFormula(formula: string, sheet: number, sheetByName: ReadonlyMap<string, number>): FormulaNode {
  const tokens = tokenize(formula.slice(1));
  if (!tokens) throw new NoFormula("the formula cannot be read");
  const reader = new Reader(withoutIdleSpaces(tokens), sheet, sheetByName);
  const node = reader.expression(0, true);
  reader.end();
  return node;
}

const endsOperand = (token: Token | undefined): boolean =>
  token !== undefined && ["name", "number", "quoted", "error", "close", "bracket", "text"].includes(token.kind);
const startsReference = (token: Token | undefined): boolean =>
  token !== undefined && (["name", "quoted", "number"].includes(token.kind) || token.text === "(");

/** Only a space between two references means anything: their common cells. */
function withoutIdleSpaces(tokens: readonly Token[]): readonly Token[] {
  const kept: Token[] = [];
  let spaced = false;
  for (const token of tokens) {
    if (token.kind === "space") {
      spaced = true;
      continue;
    }
    if (spaced && endsOperand(kept.at(-1)) && startsReference(token)) kept.push({ kind: "space", text: " " });
    kept.push(token);
    spaced = false;
  }
  return kept;
}

/** A cell whose row goes along. Whole columns have no row of their own, and whole rows are taken as they stand. */
const movingRow = /[A-Za-z]\d+$/;

function movingIn({ top }: Area, first: string, second: string): AreaNode["moving"] {
  const [from, to] = [movingRow.test(first), movingRow.test(second)];
  if (!from && !to) return undefined;
  return readPlace(first)?.row === top ? { top: from, bottom: to } : { top: to, bottom: from };
}

class Reader {
  readonly #tokens: readonly Token[];
  readonly #sheet: number;
  readonly #sheetByName: ReadonlyMap<string, number>;
  #at = 0;
  #depth = 0;

  constructor(tokens: readonly Token[], sheet: number, sheetByName: ReadonlyMap<string, number>) {
    this.#tokens = tokens;
    this.#sheet = sheet;
    this.#sheetByName = sheetByName;
  }

  end(): void {
    if (this.#at < this.#tokens.length) throw new NoFormula("the formula cannot be read");
  }

  /** @param unions - whether a comma joins references here; between the arguments of a call it does not */
  expression(weakest: number, unions: boolean): FormulaNode {
    this.#depth += 1;
    if (this.#depth > deepest) throw new NoFormula("its brackets are nested too deep to be followed");
    let left = this.#operand(unions);
    for (;;) {
      const text = this.#peek()?.text ?? "";
      if (this.#peek()?.kind === "separator" && text === "," && unions && weakest === 0) {
        this.#at += 1;
        left = { kind: "references", by: "union", left, right: this.expression(0.5, unions) };
        continue;
      }
      if (this.#peek()?.kind !== "operator" || !isOperator(text) || strength[text] <= weakest) break;
      this.#at += 1;
      left = { kind: "operation", operator: text, left, right: this.expression(strength[text], unions) };
    }
    this.#depth -= 1;
    return left;
  }

  #peek(): Token | undefined {
    return this.#tokens[this.#at];
  }

  #take(): Token {
    const token = this.#tokens[this.#at];
    if (!token) throw new NoFormula("the formula cannot be read");
    this.#at += 1;
    return token;
  }

  #operand(unions: boolean): FormulaNode {
    const signs: ("-" | "+" | "@")[] = [];
    while (this.#peek()?.kind === "operator" && ["-", "+", "@"].includes(this.#peek()?.text ?? ""))
      signs.push(this.#take().text as "-" | "+" | "@");
    let node = this.#references(unions);
    while (this.#peek()?.text === "%") {
      this.#at += 1;
      node = { kind: "percent", of: node };
    }
    // Pairs of signs are as deep a tree as brackets are.
    if (signs.length > deepest) throw new NoFormula("its signs are nested too deep to be followed");
    for (const sign of signs.reverse()) node = { kind: "sign", sign, of: node };
    return node;
  }

  /** References and what joins them: `A1:B2`, `A1:INDEX(…)`, `A1:B9 B1:C3`. */
  #references(unions: boolean): FormulaNode {
    let left = this.#range(unions);
    while (this.#peek()?.kind === "space") {
      this.#at += 1;
      left = { kind: "references", by: "intersection", left, right: this.#range(unions) };
    }
    return left;
  }

  #range(unions: boolean): FormulaNode {
    let left = this.#single(unions);
    while (this.#peek()?.text === ":") {
      this.#at += 1;
      left = { kind: "references", by: "range", left, right: this.#single(unions) };
    }
    return left;
  }

  #single(unions: boolean): FormulaNode {
    let node = this.#bare(unions);
    while (this.#peek()?.text === "(" && (node.kind === "call" || node.kind === "invoke" || node.kind === "name")) {
      this.#at += 1;
      node = { kind: "invoke", of: node, given: this.#arguments() };
    }
    return node;
  }

  #bare(unions: boolean): FormulaNode {
    const token = this.#take();
    switch (token.kind) {
      case "text":
        return { kind: "constant", value: token.text.slice(1, -1).replaceAll('""', '"') };
      case "error":
        return { kind: "constant", value: { error: token.text.toUpperCase() as ErrorCode } };
      case "number":
        return this.#rows(token) ?? { kind: "constant", value: Number(token.text) };
      case "open":
        return token.text === "{" ? this.#array() : this.#bracketed(unions);
      case "quoted":
        return this.#onSheet(token);
      case "name":
        return this.#peek()?.text === "!" ? this.#onSheet(token) : this.#named(token);
      default:
        throw new NoFormula("the formula cannot be read");
    }
  }

  #bracketed(_unions: boolean): FormulaNode {
    const node = this.expression(0, true);
    if (this.#take().text !== ")") throw new NoFormula("the formula cannot be read");
    return node;
  }

  #onSheet(token: Token): FormulaNode {
    if (this.#take().text !== "!") throw new NoFormula("the formula cannot be read");
    const sheet = this.#sheetByName.get(unquoteSheet(token.text).toLowerCase());
    const first = this.#take();
    if (sheet === undefined) return { kind: "constant", value: { error: "#REF!" } };
    return this.#area(first, sheet) ?? { kind: "constant", value: { error: "#NAME?" } };
  }

  #rows(token: Token): FormulaNode | undefined {
    return this.#peek()?.text === ":" ? this.#area(token, this.#sheet) : undefined;
  }

  #area(first: Token, sheet: number): FormulaNode | undefined {
    const isRange = this.#peek()?.text === ":";
    const second = isRange && !this.#isCallAt(this.#at + 1) ? this.#tokens[this.#at + 1]?.text : undefined;
    const wide = second === undefined ? undefined : areaBetween(first.text, second);
    if (wide) {
      this.#at += 2;
      return { kind: "area", sheet, area: wide, moving: movingIn(wide, first.text, second as string) };
    }
    const area = areaBetween(first.text, undefined);
    return area && { kind: "area", sheet, area, moving: movingIn(area, first.text, first.text) };
  }

  #isCallAt(at: number): boolean {
    return this.#tokens[at]?.kind === "name" && this.#tokens[at + 1]?.text === "(";
  }

  #named(token: Token): FormulaNode {
    if (this.#peek()?.text === "(") {
      this.#at += 1;
      return { kind: "call", name: token.text.toUpperCase(), given: this.#arguments() };
    }
    const area = this.#area(token, this.#sheet);
    if (area) return area;
    const upper = token.text.toUpperCase();
    if (upper === "TRUE" || upper === "FALSE") return { kind: "constant", value: upper === "TRUE" };
    return { kind: "name", name: upper };
  }

  #arguments(): readonly (FormulaNode | undefined)[] {
    const given: (FormulaNode | undefined)[] = [];
    if (this.#peek()?.text === ")") {
      this.#at += 1;
      return given;
    }
    for (;;) {
      const next = this.#peek();
      given.push(next?.kind === "separator" || next?.text === ")" ? undefined : this.expression(0, false));
      const { kind, text } = this.#take();
      if (kind === "close" && text === ")") return given;
      if (kind !== "separator") throw new NoFormula("the formula cannot be read");
    }
  }

  #array(): FormulaNode {
    const rows: Cell[][] = [[]];
    for (;;) {
      let sign = 1;
      while (this.#peek()?.text === "-" || this.#peek()?.text === "+") if (this.#take().text === "-") sign = -sign;
      const { kind, text } = this.#take();
      const row = rows.at(-1) as Cell[];
      if (kind === "number") row.push(sign * Number(text));
      else if (kind === "text") row.push(text.slice(1, -1).replaceAll('""', '"'));
      else if (kind === "error") row.push({ error: text.toUpperCase() as ErrorCode });
      else if (/^(?:TRUE|FALSE)$/i.test(text)) row.push(/^true$/i.test(text));
      else throw new NoFormula("the formula cannot be read");
      const next = this.#take();
      if (next.text === "}") break;
      if (next.text === ";") rows.push([]);
      else if (next.text !== ",") throw new NoFormula("the formula cannot be read");
    }
    if (rows.some(({ length }) => length !== rows[0]?.length)) throw new NoFormula("the formula cannot be read");
    return { kind: "array", rows };
  }
}
