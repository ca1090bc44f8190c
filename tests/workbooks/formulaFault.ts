import { readPlace } from "../../src/workbook/address.ts";
import { structuredArea, unquoteSheet } from "../../src/workbook/formula/structured.ts";
import { type Token, tokenize } from "../../src/workbook/formula/tokenize.ts";
import type { DefinedName, Table } from "../../src/workbook/model.ts";

/** What a formula of a workbook may refer to. */
export interface Known {
  readonly sheets: readonly string[];
  readonly names: readonly DefinedName[];
  readonly tables: readonly Table[];
}

class Fault extends Error {}

const isColumn = (text: string): boolean => /^\$[A-Z]{1,3}$/.test(text);

/**
 * Reads a formula by the grammar of the format (ECMA-376 Part 1 §18.17.2) and looks up whatever it refers to.
 *
 * @param formula - without `=`
 * @returns what is wrong with it; undefined when nothing is
 */
export function formulaFault(formula: string, known: Known): string | undefined {
  const tokens = tokenize(formula)?.filter(({ kind }) => kind !== "space");
  if (tokens === undefined) return "it cannot be cut into pieces";
  try {
    const reading = reader(tokens, known);
    reading.expression();
    return reading.next() === undefined ? undefined : `"${reading.next()?.text}" stands where nothing may follow`;
  } catch (error) {
    if (error instanceof Fault) return error.message;
    throw error;
  }
}

const infix = new Set(["+", "-", "*", "/", "^", "&", "=", "<", ">", "<=", ">=", "<>", ":"]);

function reader(tokens: readonly Token[], known: Known) {
  let at = 0;
  const next = (): Token | undefined => tokens[at];
  const fail = (words: string): never => {
    throw new Fault(`${words}, piece ${at + 1}`);
  };
  const take = (text: string): void => {
    if (next()?.text !== text) fail(`"${text}" is missing`);
    at++;
  };

  function expression(): void {
    operand();
    while (next()?.text === "%") at++;
    while (next()?.kind === "operator" && infix.has(next()?.text ?? "")) {
      at++;
      operand();
      while (next()?.text === "%") at++;
    }
  }

  function operand(): void {
    while (next()?.text === "-" || next()?.text === "+") at++;
    const token = next() ?? fail("it ends too soon");
    at++;
    if (["number", "text", "error"].includes(token.kind)) return;
    if (token.text === "(") {
      expression();
      take(")");
    } else if (token.text === "{") constants();
    else if (next()?.text === "!") onSheet(token);
    else if (token.kind !== "name") fail(`"${token.text}" is no operand`);
    else if (next()?.text === "(") call();
    else if (next()?.kind === "bracket") structured(token.text);
    else if (!readPlace(token.text) && !/^(?:TRUE|FALSE)$/i.test(token.text)) named(token.text);
  }

  function named(name: string): void {
    const there = [...known.names, ...known.tables].map((candidate) => candidate.name.toLowerCase());
    if (!there.includes(name.toLowerCase())) fail(`no name ${name}`);
  }

  function onSheet(token: Token): void {
    if (!known.sheets.includes(unquoteSheet(token.text))) fail(`no sheet ${token.text}`);
    take("!");
    const cell = next() ?? fail("a cell is missing");
    at++;
    if (isColumn(cell.text)) {
      take(":");
      const end = next() ?? fail("a column is missing");
      at++;
      if (!isColumn(end.text)) fail(`"${end.text}" is no column`);
    } else if (!readPlace(cell.text) && !/^\$\d+$/.test(cell.text)) fail(`"${cell.text}" is no cell`);
  }

  function call(): void {
    take("(");
    while (next()?.text !== ")") {
      if (next()?.text !== ",") expression();
      if (next()?.text === ",") at++;
      else if (next()?.text !== ")") fail("a comma or a bracket is missing");
    }
    take(")");
  }

  function structured(name: string): void {
    const table = known.tables.find((candidate) => candidate.name === name) ?? fail(`no table ${name}`);
    const bracket = next()?.text ?? "";
    at++;
    const inside = { row: table.area.top + 1, column: table.area.left };
    if (!structuredArea(table, bracket, inside)) fail(`nothing called ${bracket} in table ${name}`);
  }

  function constants(): void {
    while (next()?.text !== "}") {
      if (next()?.text === "-") at++;
      if (!["number", "text", "error", "name"].includes(next()?.kind ?? "")) fail("no constant");
      at++;
      if (next()?.kind === "separator") at++;
    }
    take("}");
  }

  return { expression, next };
}
