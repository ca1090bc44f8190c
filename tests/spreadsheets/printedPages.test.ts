import { execFileSync } from "node:child_process";
import { copyFileSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import { startCalc } from "./startCalc.ts";

/** Sheets that must fit on one page each. */
const onePage = {
  "visit-sheet": ["Start", "Visit", "Doses", "Page"],
  "flock-comparison": ["Start", "One flock"],
} as const;

/** What the charts are drawn from is not printed whole. */
const notPrinted = ["Figures"];

describe.each(Object.entries(onePage))("samples/%s.xlsx on paper", (name, single) => {
  const sheets = openWorkbook(readFileSync(`samples/${name}.xlsx`)).sheets;
  let pages: ReadonlyMap<string, readonly string[]>;

  beforeAll(async () => {
    const calc = await startCalc("25.2");
    try {
      const [path, pdf] = [join(calc.folder, `${name}.xlsx`), join(calc.folder, `${name}.pdf`)];
      copyFileSync(`samples/${name}.xlsx`, path);
      await calc.read(path, { saveAs: pdf, filter: "calc_pdf_Export" });
      pages = bySheet(execFileSync("pdftotext", ["-layout", pdf, "-"], { encoding: "utf8" }), name);
    } finally {
      await calc.stop();
    }
  });

  it("has pages of every sheet, in their order", () => {
    expect([...pages.keys()]).toEqual(sheets.map((sheet) => sheet.name));
  });

  it("keeps to one page where one page is meant", () => {
    for (const sheet of single) expect(pages.get(sheet), sheet).toHaveLength(1);
  });

  it("shows no error and no number too wide for its cell", () => {
    for (const [sheet, texts] of pages)
      if (!notPrinted.includes(sheet))
        expect(texts.join("\n"), sheet).not.toMatch(/#NAME\?|#VALUE!|#N\/A|#REF!|Err:\d|###/);
  });

  it("shows every word that was worked out or typed", () => {
    for (const { name: sheet, rows } of sheets) {
      if (notPrinted.includes(sheet)) continue;
      const printed = new Set(wordsIn((pages.get(sheet) ?? []).join("\n")));
      const texts = rows.flatMap(({ cells }) =>
        cells.flatMap(({ value }) => (typeof value === "string" ? [value] : [])),
      );
      const missing = texts.flatMap((text) => wordsIn(text).filter((word) => !printed.has(word)));
      expect(missing, sheet).toEqual([]);
    }
  });
});

// A word at the end of a line may be cut by nothing but the line, so words are compared one by one.
const wordsIn = (text: string): readonly string[] => text.match(/[\p{L}\p{N}]{3,}/gu) ?? [];

/** The pages of each sheet, known by the line at their foot. */
function bySheet(text: string, name: string): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, string[]>();
  for (const page of text.split("\f")) {
    const sheet = new RegExp(`${name}\\.xlsx, (.*?)\\s+Page \\d+ of \\d+`).exec(page)?.[1];
    if (sheet !== undefined) found.set(sheet, [...(found.get(sheet) ?? []), page]);
  }
  return found;
}
