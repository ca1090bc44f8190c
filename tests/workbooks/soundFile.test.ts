import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { strFromU8, unzipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { engineInNode } from "../../src/hosts/headless/engineInNode.ts";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import { recalculate } from "../../src/workbook/recalculate.ts";
import { collateBooks } from "../../src/workbooks/collate/collateBooks.ts";
import { readFootBook } from "../../src/workbooks/collate/readFootBook.ts";
import { flockComparison } from "../../src/workbooks/comparison/flockComparison.ts";
import { emptyBook } from "../../src/workbooks/footBook/emptyBook.ts";
import { flockFootBook } from "../../src/workbooks/footBook/flockFootBook.ts";
import { emptyVisit } from "../../src/workbooks/visitSheet/emptyVisit.ts";
import { visitSheet } from "../../src/workbooks/visitSheet/visitSheet.ts";
import { workedOut } from "../../src/workbooks/workedOut.ts";
import { formulaFault, type Known } from "./formulaFault.ts";
import { inventBook, makeFootBook } from "./makeFootBook.ts";
import { faultsOf } from "./vendorValidator.ts";

const folder = mkdtempSync(join(tmpdir(), "soundfold-sound-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const wanted = { farm: 'O\'Hara & "Sons" <hill>', groups: ["Ewes", "Tups & <lambs>"], made: "2026-10-31" };

async function collated(): Promise<Uint8Array> {
  const books = [1, 2, 3].map(async (seed) => ({
    file: `${seed}.xlsx`,
    read: readFootBook(await makeFootBook(inventBook(seed, 40))),
  }));
  const content = collateBooks(await Promise.all(books), { year: undefined, letters: false, made: "2026-10-31" });
  if (!content) throw new Error("nothing was collated");
  return (await workedOut(flockComparison(content.content))).bytes;
}

const again = async (bytes: Uint8Array): Promise<Uint8Array> =>
  (await recalculate(openWorkbook(bytes), engineInNode())).bytes;

const samples = readdirSync("samples").filter((name) => name.endsWith(".xlsx"));
const workbooks: Readonly<Record<string, () => Promise<Uint8Array>>> = {
  ...Object.fromEntries(samples.map((name) => [name, async () => readFileSync(join("samples", name))])),
  ...Object.fromEntries(
    samples.map((name) => [`${name}, worked out again`, () => again(readFileSync(join("samples", name)))]),
  ),
  "a foot book with names that need care": async () => (await workedOut(flockFootBook(emptyBook(wanted)))).bytes,
  "a visit sheet with names that need care": async () => (await workedOut(visitSheet(emptyVisit(wanted)))).bytes,
  "three books collated": collated,
};

describe.each(Object.entries(workbooks))("%s", (name, make) => {
  let bytes: Uint8Array;
  let parts: Readonly<Record<string, string>>;
  let known: Known;
  beforeAll(async () => {
    bytes = await make();
    parts = Object.fromEntries(Object.entries(unzipSync(bytes)).map(([part, content]) => [part, strFromU8(content)]));
    const { sheets, names } = openWorkbook(bytes);
    known = { sheets: sheets.map((sheet) => sheet.name), names, tables: sheets.flatMap(({ tables }) => tables) };
  });
  const partsLike = (pattern: RegExp): readonly (readonly [string, string])[] =>
    Object.entries(parts).filter(([part]) => pattern.test(part));

  test("has no fault that the vendor's own validator of the format finds", async () => {
    const file = join(folder, `${name.replace(/\W/g, "-")}.xlsx`);
    writeFileSync(file, bytes);
    expect(faultsOf(file)).toEqual([]);
  });

  test("refers to nothing that cannot be read or is not there: names, rules for typing, emphasis, formulas, charts", () => {
    const formulas = [
      ...known.names
        .filter(({ name: called }) => !called.endsWith("Print_Titles"))
        .map(({ name: called, text }) => [called, text] as const),
      ...partsLike(/^xl\/worksheets\/sheet/).flatMap(([part, text]) =>
        [...text.matchAll(/<(f|formula|formula1|formula2)(?: [^>]*)?>([^<]+)<\/\1>/g)].map(
          ([, , formula = ""]) => [part, plain(formula)] as const,
        ),
      ),
      ...partsLike(/^xl\/charts\/chart/).flatMap(([part, text]) =>
        [...text.matchAll(/<(?:c:)?f>([^<]*)<\/(?:c:)?f>/g)].map(([, formula = ""]) => [part, plain(formula)] as const),
      ),
    ];
    expect(formulas.length).toBeGreaterThan(20);
    const faults = formulas.flatMap(([where, formula]) => {
      const fault = formulaFault(formula, known);
      return fault === undefined ? [] : [`${where}: ${formula}: ${fault}`];
    });
    expect(faults).toEqual([]);
    for (const { name: called, text } of known.names.filter(({ name: title }) => title.endsWith("Print_Titles")))
      expect(
        known.sheets.some((sheet) => text.startsWith(`'${sheet}'!$`)),
        `${called} ${text}`,
      ).toBe(true);
  });

  test("says a modern engine worked it out, and counts its shared texts as they are used", () => {
    expect(parts["xl/workbook.xml"]).toContain('calcId="191029"');
    const uses = partsLike(/^xl\/worksheets\/sheet/).flatMap(([, text]) => text.match(/<c [^>]*\bt="s"/g) ?? []);
    expect(/<sst [^>]*\bcount="(\d+)"/.exec(parts["xl/sharedStrings.xml"] ?? "")?.[1]).toBe(String(uses.length));
  });
});

const plain = (xml: string): string =>
  xml
    .replace(/&lt;/g, "<")
    .replace(/&gt;/g, ">")
    .replace(/&(?:quot|#34);/g, '"')
    .replace(/&(?:apos|#39);/g, "'")
    .replace(/&amp;/g, "&");

describe("the reader of formulas", () => {
  const known: Known = {
    sheets: ["Sale check"],
    names: [{ name: "as_of", text: "'Sale check'!$A$1", sheet: undefined }],
    tables: [
      {
        name: "Cases",
        area: { top: 3, left: 0, bottom: 9, right: 1 },
        columns: ["Tag", "Treated"],
        headerRows: 1,
        totalsRows: 0,
      },
    ],
  };

  test.each(["IF(as_of>1,-SUM(Cases[Tag]),'Sale check'!$A$1:$B$2)", '{1,"a";-2,"b"}&""', "MAX(A1,,2)*10%"])(
    "reads %s",
    (formula) => expect(formulaFault(formula, known)).toBeUndefined(),
  );

  test.each([
    ["Flocks!'Comparison'!$A$10", "no sheet Flocks, piece 2"],
    ["COUNTA('Sale check'!'Sale check'!$A$1)", "\"'Sale check'\" is no cell, piece 6"],
    ["SUM(A1", "a comma or a bracket is missing, piece 4"],
    ["year_from+1", "no name year_from, piece 2"],
    ["Cases[Dose]", "nothing called [Dose] in table Cases, piece 3"],
    ["1 2", '"2" stands where nothing may follow'],
  ])("finds the fault of %s", (formula, fault) => expect(formulaFault(formula, known)).toBe(fault));
});
