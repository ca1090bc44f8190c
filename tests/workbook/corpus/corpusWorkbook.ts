import { readFileSync } from "node:fs";
import type { Cell } from "../../../src/cells/cell.ts";
import { buildWorkbook, rowsOf } from "../buildWorkbook.ts";

export interface CorpusCase {
  readonly function: string;
  /** As a file holds it, without `=`. */
  readonly formula: string;
  /** What a spreadsheet saves for it; errors by their text. */
  readonly value: number | string | boolean;
  /** The rule of the format's documentation the value follows, where LibreOffice gives another. */
  readonly rule?: string;
}

interface Corpus {
  readonly columns: Readonly<Record<string, readonly (number | string | boolean | null)[]>>;
  readonly hidden: readonly number[];
  readonly cases: readonly CorpusCase[];
  /** Of a workbook that counts its days from 1904. */
  readonly cases1904: readonly CorpusCase[];
}

export const corpus = JSON.parse(readFileSync(new URL("corpus.json", import.meta.url), "utf8")) as Corpus;

export const casesOf = (dates: 1900 | 1904): readonly CorpusCase[] =>
  dates === 1904 ? corpus.cases1904 : corpus.cases;

const escaped = (text: string): string => text.replaceAll("&", "&amp;").replaceAll("<", "&lt;");

const attributesOf = (value: CorpusCase["value"]): string => {
  if (typeof value === "number") return "";
  if (typeof value === "boolean") return ' t="b"';
  return isErrorText(value) ? ' t="e"' : ' t="str"';
};

const isErrorText = (value: unknown): boolean =>
  typeof value === "string" && /^#(?:VALUE!|N\/A|REF!|NAME\?|DIV\/0!|NUM!|NULL!)$/.test(value);

/** The value of a case as a cell. */
export const cellOf = (value: CorpusCase["value"]): Cell =>
  isErrorText(value) ? ({ error: value } as Cell) : (value as Cell);

/**
 * The corpus as a workbook: the records on one sheet, the formulas down the first column of another.
 *
 * @param saved - whether the formulas carry their values
 * @param more - sheets behind these
 * @param dates - from which year its days are counted
 */
export function corpusWorkbook(
  saved: boolean,
  more: readonly { readonly name: string; readonly rows: string }[] = [],
  dates: 1900 | 1904 = 1900,
): Uint8Array {
  const cells: Record<string, number | string | boolean> = {};
  for (let row = 0; row < 12; row += 1) {
    for (const [letter, values] of Object.entries(corpus.columns)) {
      const value = values[row];
      if (value !== null && value !== undefined) cells[`${letter}${row + 1}`] = value;
    }
  }
  const hiddenRows = rowsOf(cells).replace(/<row r="(\d+)">/g, (tag, row: string) =>
    corpus.hidden.includes(Number(row)) ? `<row r="${row}" hidden="1">` : tag,
  );
  const formulas = casesOf(dates)
    .map(({ formula, value }, index) => {
      const content = typeof value === "boolean" ? Number(value) : escaped(String(value));
      const held = saved ? `<v>${content}</v>` : "";
      return `<row r="${index + 1}"><c r="A${index + 1}"${saved ? attributesOf(value) : ""}><f>${escaped(formula)}</f>${held}</c></row>`;
    })
    .join("");
  return buildWorkbook({
    date1904: dates === 1904,
    sheets: [{ name: "Data", rows: hiddenRows }, { name: "Formulas", rows: formulas }, ...more],
  });
}
