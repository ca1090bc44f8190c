import { execFileSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { numfmt } from "@univerjs/core";
import { unzipSync } from "fflate";
import { beforeAll, describe, expect, it } from "vitest";
import { isoText } from "../../src/cells/day.ts";
import { type Area, isInside, readArea } from "../../src/workbook/address.ts";
import type { Sheet, SheetCell } from "../../src/workbook/model.ts";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import { type CellLook, readLooks } from "../../src/workbook/parts/readLooks.ts";
import { emptyBook } from "../../src/workbooks/footBook/emptyBook.ts";
import { flockFootBook } from "../../src/workbooks/footBook/flockFootBook.ts";
import { inventedBook } from "../../src/workbooks/footBook/inventedBook.ts";
import { year } from "../../src/workbooks/inventedFlock/flockYear.ts";
import { sampleSeed } from "../../src/workbooks/inventedFlock/inventedFlock.ts";
import { onDay } from "../../src/workbooks/onDay.ts";
import { inventedVisit } from "../../src/workbooks/visitSheet/inventedVisit.ts";
import { visitSheet } from "../../src/workbooks/visitSheet/visitSheet.ts";
import { workedOut } from "../../src/workbooks/workedOut.ts";
import { startCalc } from "./startCalc.ts";
import { withoutAnswers } from "./withoutAnswers.ts";

const made = isoText(year.last);

/** How many pages of A4 each sheet of a filled workbook is meant to take. */
const meant: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  "flock-foot-book": {
    Start: 1,
    Settings: 1,
    Gathers: 1,
    Cases: 6,
    Today: 5,
    "May they go": 1,
    "Keep apart": 1,
    Picture: 2,
    "Medicine use": 1,
    Problems: 1,
    "Gather form": 1,
    "Case form": 1,
    "As of": 1,
  },
  "visit-sheet": { Start: 1, Visit: 1, Doses: 1, "Care plan": 4, Page: 1, Quarantine: 1, "Plan lines": 1 },
  "flock-comparison": {
    Start: 1,
    Flocks: 1,
    Comparison: 1,
    "What is done": 4,
    Pictures: 1,
    "One flock": 1,
    Books: 1,
    Figures: 1,
  },
};

describe.each(Object.entries(meant))("samples/%s.xlsx on paper", (name, pagesMeant) => {
  const bytes = readFileSync(`samples/${name}.xlsx`);
  const workbook = openWorkbook(bytes);
  const looks = readLooks("xl/styles.xml", Buffer.from(unzipSync(bytes)["xl/styles.xml"] ?? []).toString(), []);
  let pages: ReadonlyMap<string, readonly string[]>;

  beforeAll(async () => {
    const calc = await startCalc("25.2");
    try {
      const [path, pdf] = [join(calc.folder, `${name}.xlsx`), join(calc.folder, `${name}.pdf`)];
      // Whatever is printed was worked out there.
      writeFileSync(path, withoutAnswers(bytes));
      await calc.read(path, { saveAs: pdf, filter: "calc_pdf_Export" });
      pages = bySheet(execFileSync("pdftotext", ["-layout", pdf, "-"], { encoding: "utf8" }), name);
    } finally {
      await calc.stop();
    }
  });

  it("takes the pages it is meant to take, in the order of the sheets", () => {
    expect(workbook.sheets.map((sheet) => sheet.name)).toEqual(Object.keys(pagesMeant));
    expect(Object.fromEntries([...pages].map(([sheet, texts]) => [sheet, texts.length]))).toEqual(pagesMeant);
    expect([...pages.keys()]).toEqual(Object.keys(pagesMeant));
  });

  it("has no blank page", () => {
    for (const [sheet, texts] of pages)
      for (const text of texts) expect(wordsIn(text).length, sheet).toBeGreaterThan(3);
  });

  it("shows no error and no number too wide for its cell", () => {
    // Two sheets say in words that #N/A is meant where a chart has a gap, and Start what stands there without functions.
    for (const [sheet, texts] of pages)
      expect(
        texts.join("\n").replaceAll(/#N\/A is meant|#NAME\?\s+(?:in\s+their\s+place|at\s+once)/g, ""),
        sheet,
      ).not.toMatch(/#NAME\?|#VALUE!|#N\/A|#REF!|#DIV\/0!|#NUM!|Err:\d|###/);
  });

  it.each(workbook.sheets)("shows what is in each cell of $name, as it was worked out here", (sheet) => {
    const area = printArea(sheet);
    const shown = sheet.rows
      .flatMap(({ cells }) => cells)
      .filter((cell) => area === undefined || isInside(cell, area))
      .flatMap((cell) => wordsIn(shownText(cell, looks)));
    expect(shown.length).toBeGreaterThan(10);
    expect(missing(shown, wordsIn((pages.get(sheet.name) ?? []).join("\n")))).toEqual([]);
  });

  /** Undefined where all that is filled is printed; Calc passes over an area that is a formula. */
  function printArea({ name: sheetName }: Sheet): Area | undefined {
    const index = workbook.sheets.findIndex((sheet) => sheet.name === sheetName);
    const named = workbook.names.find(({ name: what, sheet }) => what === "_xlnm.Print_Area" && sheet === index);
    const columns = named && /!\$([A-Z]+):\$([A-Z]+)$/.exec(named.text);
    if (columns) return readArea(`${columns[1]}1:${columns[2]}1048576`);
    const area = named && /!(\$[A-Z]+\$\d+:\$[A-Z]+\$\d+)$/.exec(named.text)?.[1];
    return area === undefined ? undefined : readArea(area.replaceAll("$", ""));
  }
});

// There each list has its whole room from the start, and a program prints rows that are still blank.
describe.each([
  ["foot book, empty", () => flockFootBook(emptyBook({ made }), "libreoffice"), 17],
  ["foot book, filled", () => flockFootBook(inventedBook(sampleSeed), "libreoffice"), 22],
  ["visit sheet, filled", () => visitSheet(inventedVisit(sampleSeed), "libreoffice"), 10],
])("the edition for LibreOffice on paper: %s", (_, plan, most) => {
  it("prints no pages of lines that are still blank", async () => {
    const { bytes } = await onDay(year.last, () => workedOut(plan()));
    const calc = await startCalc("25.2");
    try {
      const [path, pdf] = [join(calc.folder, "book.xlsx"), join(calc.folder, "book.pdf")];
      writeFileSync(path, bytes);
      await calc.read(path, { saveAs: pdf, filter: "calc_pdf_Export" });
      const text = execFileSync("pdftotext", ["-layout", pdf, "-"], { encoding: "utf8" });
      const pages = [...bySheet(text, "book")].flatMap(([sheet, texts]) => texts.map(() => sheet));
      expect(pages.length).toBeLessThanOrEqual(most);
      expect(new Set(pages).size).toBeGreaterThan(6);
    } finally {
      await calc.stop();
    }
  });
});

/** As a spreadsheet shows it. */
function shownText({ value, style }: SheetCell, looks: readonly CellLook[]): string {
  if (value === null || typeof value === "object") return "";
  if (typeof value === "boolean") return String(value).toUpperCase();
  return typeof value === "string" ? value : numfmt.format(looks[style]?.format ?? "General", value);
}

// Lines end where the cell does, so words are compared one by one; a minus belongs to a number that stands alone.
const wordsIn = (text: string): readonly string[] =>
  text.normalize("NFKC").match(/(?<!\S)-\d[\d.]*%?|[\p{L}\p{N}]+(?:\.\d+)*%?/gu) ?? [];

/** The words that are printed less often than they stand in cells. */
function missing(shown: readonly string[], printed: readonly string[]): readonly string[] {
  const left = new Map<string, number>();
  for (const word of printed) left.set(word, (left.get(word) ?? 0) + 1);
  return shown.filter((word) => {
    const there = left.get(word) ?? 0;
    left.set(word, there - 1);
    return there <= 0;
  });
}

/** The pages of each sheet, known by the line at their foot. */
function bySheet(text: string, name: string): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, string[]>();
  for (const page of text.split("\f").filter((page) => page.trim() !== "")) {
    const foot = new RegExp(`${name}\\.xlsx, (.*?)\\s+Page \\d+ of \\d+`).exec(page);
    if (foot?.[1] === undefined) throw new Error(`a page without its line at the foot: ${page}`);
    found.set(foot[1], [...(found.get(foot[1]) ?? []), page.replace(foot[0], "")]);
  }
  return found;
}
