import { readdirSync, readFileSync } from "node:fs";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { beforeAll, describe, expect, it } from "vitest";
import { engineInNode } from "../../../src/hosts/headless/engineInNode.ts";
import { openWorkbook } from "../../../src/workbook/openWorkbook.ts";
import { recalculate } from "../../../src/workbook/recalculate.ts";
import { buildWorkbook } from "../buildWorkbook.ts";
import { corpus, corpusWorkbook } from "../corpus/corpusWorkbook.ts";
import { excelizeWorkbook } from "../writers/excelize.ts";
import { exceljsWorkbook } from "../writers/exceljs.ts";
import { changedOutside, type Outside } from "./changedOutside.ts";
import { withOtherValues } from "./withOtherValues.ts";

const samples = new URL("../../../samples/", import.meta.url);

// 9 September 2027 at noon: a day on which none of the files was saved.
const anotherDay = 46_639.5;

async function worked(bytes: Uint8Array, all = false): Promise<Uint8Array> {
  return (
    await recalculate(
      openWorkbook(bytes),
      engineInNode(() => anotherDay),
      undefined,
      { all },
    )
  ).bytes;
}

/** A sheet with one FOOT formula, what hangs on it, and what does not. */
const foot = {
  name: "Foot",
  rows: '<row r="1"><c r="A1"><f>FOOT.FLOCKPREV(Data!A1,Data!I1)</f><v>0</v></c><c r="B1"><f>A1*2</f><v>0</v></c><c r="C1"><f>SUM(Data!A1:A12)</f><v>52</v></c><c r="D1"><f>B1+C1</f><v>52</v></c></row>',
};

const books: Readonly<Record<string, () => Uint8Array | Promise<Uint8Array>>> = {
  ...Object.fromEntries(
    readdirSync(samples)
      .filter((file) => file.endsWith(".xlsx"))
      .map((file) => [`sample ${file}`, () => readFileSync(new URL(file, samples))] as const),
  ),
  "the corpus of formulas": () => corpusWorkbook(true, [foot]),
  // These writers leave no values; once worked out, all are right.
  excelize: async () => worked(await excelizeWorkbook(), true),
  exceljs: async () => worked(await exceljsWorkbook(), true),
  "exceljs, 1904": async () => worked(await exceljsWorkbook(true), true),
};

describe.each(Object.entries(books))("%s, worked out on another day", (name, make) => {
  let right: Outside;
  let other: Outside;
  beforeAll(async () => {
    const bytes = new Uint8Array(await make());
    right = changedOutside(bytes, await worked(bytes));
    const wrong = withOtherValues(bytes);
    other = changedOutside(wrong, await worked(wrong));
  });

  it("changes to the byte in no cell outside the cone of FOOT", () => {
    expect(right.changed).toEqual([]);
    expect(right.cells).toBeGreaterThan(0);
  });

  it("keeps in these cells values that no spreadsheet would come to", () => {
    expect(other.changed).toEqual([]);
    // The comparison holds values beside values, and no formula of ours that its other sheets would hang on.
    if (/corpus/.test(name)) expect(other.formulas).toBeGreaterThan(0.9 * corpus.cases.length);
  });
});

describe("a cell outside the cone that does change", () => {
  const rows = `<row r="1"><c r="A1"><v>4</v></c><c r="B1"><v>20</v></c></row><row r="2"><c r="A2"><f>FOOT.FLOCKPREV(A1,B1)</f><v>0.2</v></c><c r="B2"><f>A2*2</f><v>0.4</v></c></row><row r="3"><c r="A3"><f>A1+1</f><v>5</v></c><c r="B3" t="str"><f>"a"&amp;A1</f><v>a4</v></c></row>`;
  const before = buildWorkbook({ sheets: [{ name: "One", rows }] });
  const tampered = (change: (text: string) => string): readonly string[] => {
    const files = unzipSync(before);
    const part = "xl/worksheets/sheet1.xml";
    return changedOutside(before, zipSync({ ...files, [part]: strToU8(change(strFromU8(files[part] as Uint8Array))) }))
      .changed;
  };

  it.each<[string, (text: string) => string, readonly string[]]>([
    ["a number", (text) => text.replace("<v>5</v>", "<v>6</v>"), ["One!A3"]],
    ["the spelling of a number", (text) => text.replace("<v>5</v>", "<v>5.0</v>"), ["One!A3"]],
    ["a text", (text) => text.replace("<v>a4</v>", "<v>A4</v>"), ["One!B3"]],
    ["a formula", (text) => text.replace("A1+1", "A1+2"), ["One!A3"]],
    ["a typed cell", (text) => text.replace("<v>4</v>", "<v>3</v>"), ["One!A1"]],
    ["a cell lost", (text) => text.replace(/<c r="B3".*?<\/c>/, ""), ["One!B3"]],
    [
      "a cell more",
      (text) => text.replace(/<\/row>$/, '<c r="Z3"/></row>').replace(/(<row r="3">)/, '$1<c r="Y9"/>'),
      ["One!Y9"],
    ],
    ["nothing outside", (text) => text.replace("<v>0.2</v>", "<v>0.3</v>"), []],
  ])("is named: %s", (_, change, cells) => {
    expect(tampered(change).map((line) => line.split(": ")[0])).toEqual(cells);
  });

  it("is seen where all is worked out: the values of another program are gone", async () => {
    const wrong = withOtherValues(before);
    expect(changedOutside(wrong, await worked(wrong, true)).changed).toHaveLength(2);
  });
});
