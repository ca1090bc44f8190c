import { describe, expect, it } from "vitest";
import { catalogue } from "../../../functions/catalogue.ts";
import { momentFromText } from "../../../src/cells/day.ts";
import { numberIn } from "../../../src/cells/numberIn.ts";
import { evaluate } from "../../../src/definition/evaluate.ts";
import { readCriterion, wildcard } from "../../../src/hosts/headless/evaluator/criteria.ts";
import { textToNumber } from "../../../src/hosts/headless/evaluator/engineFunctions.ts";
import { isUnclearDate } from "../../../src/hosts/headless/isUnclearDate.ts";
import { univerInNode } from "../../../src/hosts/headless/univerInNode.ts";
import { readArea, readPlace } from "../../../src/workbook/address.ts";
import { footName } from "../../../src/workbook/formula/functionName.ts";
import { parseFormula } from "../../../src/workbook/formula/parseFormula.ts";
import { referencesIn } from "../../../src/workbook/formula/referencesIn.ts";
import { shiftFormula } from "../../../src/workbook/formula/shiftFormula.ts";
import { storedSpelling } from "../../../src/workbook/formula/storedSpelling.ts";
import { structuredArea } from "../../../src/workbook/formula/structured.ts";
import { tokenize } from "../../../src/workbook/formula/tokenize.ts";
import { isOneCall } from "../../../src/workbook/saving/changesOf.ts";
import { decodeText, encodeText, escapeXml } from "../../../src/workbook/xml/escapeXml.ts";

const length = 1_000_000;
const filled = (piece: string, end = ""): string => piece.repeat(Math.ceil(length / piece.length)) + end;

// Each is such that a reader which goes back to try another way would take hours.
const texts: readonly (readonly [string, string])[] = [
  ["digits", filled("1", "x")],
  ["digits with a point", `${filled("1")}.${filled("1", "x")}`],
  ["thousands", filled("1,111", "x")],
  ["blanks", filled(" ", "x")],
  ["blanks and digits", filled(" 1", "x")],
  ["brackets", filled("(")],
  ["braces", filled("{")],
  ["square brackets", filled("[")],
  ["quotes", filled('"', "x")],
  ["half quotes", `"${filled("x")}`],
  ["apostrophes", filled("'", "x")],
  ["signs", filled("-", "x")],
  ["addresses", filled("A1:")],
  ["calls", filled("SUM(")],
  ["stars", filled("*a", "b")],
  ["escapes", filled("_x0041", "_")],
  ["dates", filled("2026-03-14 ", "x")],
  ["prefixes", filled("_xlfn.", "x")],
  ["letters", filled("ZZ")],
];

// Each goes through a hundred and more arguments.
const inFunctions: ReadonlySet<string> = new Set(["digits", "blanks and digits", "dates"]);

const parts = univerInNode();
const toNumber = textToNumber(parts, 0);
const sheets = new Map([["one", 0]]);
const table = {
  name: "T",
  area: { top: 0, left: 0, bottom: 9, right: 1 },
  columns: ["a", "b"],
  headerRows: 1,
  totalsRows: 0,
};

const readers: Readonly<Record<string, (text: string) => unknown>> = {
  numberIn,
  momentFromText,
  textToNumber: toNumber,
  isUnclearDate: (text) => isUnclearDate(text.slice(0, 64), parts.core.numfmt),
  wildcard: (text) => wildcard(text)("a".repeat(100)),
  "a text against a pattern": (text) => wildcard("*a*b*?c")(text),
  readCriterion: (text) => readCriterion(text, toNumber).fits(text),
  readPlace,
  readArea,
  footName,
  tokenize,
  shiftFormula: (text) => shiftFormula(text, 1, 1),
  storedSpelling,
  isOneCall,
  referencesIn: (text) => referencesIn(`=${text}`, 0, sheets),
  structuredArea: (text) => structuredArea(table, `[${text}]`, { row: 1, column: 0 }),
  parseFormula(text) {
    try {
      return parseFormula(`=${text}`, 0, sheets);
    } catch (error) {
      return error;
    }
  },
  decodeText,
  encodeText,
  escapeXml,
};

describe.each(texts)("a million characters of %s", (kind, text) => {
  it.each(Object.keys(readers))("come to an end in %s", (name) => {
    expect(() => readers[name]?.(text)).not.toThrow();
  });

  if (inFunctions.has(kind))
    it("come to an end in every function of the sheet, whichever argument they are", () => {
      for (const definition of catalogue) {
        const [example] = definition.examples;
        Object.keys(definition.parameters).forEach((_name, index) => {
          const given = [...(example?.call ?? [])].map((one) => (one === undefined ? null : one));
          given[index] = text;
          const outcome = evaluate(definition, given as never);
          expect(outcome).toHaveProperty("ok");
        });
      }
    }, 120_000);
});
