import { type Area, isInside, type Place, readArea } from "../../../workbook/address.ts";
import type { Workbook } from "../../../workbook/workbook.ts";
import { walkXml } from "../../../workbook/xml/walkXml.ts";

/** What a workbook says may be typed into some of its cells. */
export interface CellRule {
  readonly areas: readonly Area[];
  /** The sentence the workbook itself has for it. */
  readonly sentence: string | undefined;
  /** The choices of a list: as they stand in the rule, or the cells that hold them, on the sheet of this place. */
  readonly choices: readonly string[] | { readonly sheet: number; readonly area: Area } | undefined;
}

/**
 * The data validation of one sheet of a workbook.
 *
 * @param sheet - its place among the sheets
 */
export function cellRules(workbook: Workbook, sheet: number): readonly CellRule[] {
  const { part, text, data } = workbook.sheets[sheet] ?? { part: "", text: "", data: { end: 0 } };
  const block = /<((?:\w+:)?dataValidations)\b[^>]*>[\s\S]*?<\/\1>/.exec(text.slice(data.end))?.[0];
  if (block === undefined) return [];
  const rules: CellRule[] = [];
  let open: { readonly attributes: Readonly<Record<string, string>>; formula: string } | undefined;
  let inFormula = false;
  walkXml(part, block, {
    open({ name, attributes }) {
      if (name === "dataValidation") open = { attributes, formula: "" };
      inFormula = name === "formula1";
    },
    text(content) {
      if (open && inFormula) open.formula += content;
    },
    close(name) {
      inFormula = false;
      if (name !== "dataValidation" || !open) return;
      const { sqref = "", type, prompt, error } = open.attributes;
      const choices = type === "list" ? choicesOf(open.formula.trim(), workbook, sheet) : undefined;
      rules.push({
        areas: sqref.split(" ").flatMap((area) => readArea(area) ?? []),
        sentence: prompt ?? error,
        choices,
      });
      open = undefined;
    },
  });
  return rules;
}

/** The rule for one cell, if there is one. */
export const ruleFor = (rules: readonly CellRule[], place: Place): CellRule | undefined =>
  rules.find(({ areas }) => areas.some((area) => isInside(place, area)));

function choicesOf(formula: string, workbook: Workbook, sheet: number): CellRule["choices"] {
  const literal = /^"(.*)"$/s.exec(formula)?.[1];
  if (literal !== undefined) return literal.split(",").map((choice) => choice.trim());
  const named = workbook.names.filter(({ name }) => name.toLowerCase() === formula.toLowerCase());
  const name = named.find((known) => known.sheet === sheet) ?? named.find((known) => known.sheet === undefined);
  return rangeIn(name?.text ?? formula, workbook, sheet);
}

// `A20:INDEX(A20:A31, …)` is how a workbook writes the filled part of A20:A31.
const filledPart = /^(.+):INDEX\(([^,]+),.*\)$/is;
const range = /^(?:(?:'((?:[^']|'')+)'|([^'!:]+))!)?(\$?[A-Z]{1,3}\$?\d+(?::\$?[A-Z]{1,3}\$?\d+)?)$/i;

function rangeIn(text: string, { sheets }: Workbook, own: number): CellRule["choices"] {
  const [, first = "", whole = ""] = filledPart.exec(text) ?? [];
  const [, quoted, plain, cells = ""] = range.exec(whole.startsWith(first) ? whole || text : text) ?? [];
  const name = quoted?.replaceAll("''", "'") ?? plain;
  const sheet = name === undefined ? own : sheets.findIndex((known) => known.name.toLowerCase() === name.toLowerCase());
  const area = readArea(cells);
  return area && sheet >= 0 ? { sheet, area } : undefined;
}
