import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Cell } from "../../src/cells/cell.ts";
import { engineInNode } from "../../src/hosts/headless/engineInNode.ts";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import { type Recalculated, recalculate } from "../../src/workbook/recalculate.ts";
import { sheetCells } from "../samples/sheetCells.ts";
import { changesBeyondAnswers } from "../workbook/changesBeyondAnswers.ts";
import { changedOutside } from "../workbook/cone/changedOutside.ts";
import { withOtherValues } from "../workbook/cone/withOtherValues.ts";
import { excelizeWorkbook } from "../workbook/writers/excelize.ts";
import { exceljsWorkbook } from "../workbook/writers/exceljs.ts";
import { differences, identical } from "./differences.ts";
import { pythonWorkbook } from "./pythonWorkbook.ts";
import { type Calc, type CalcCell, type CalcWorkbook, startCalc } from "./startCalc.ts";

// 9 September 2027 at noon.
const anotherDay = 46_639.5;

const typedErrors: readonly string[] = ["Records!J6", "Records!J7"];

let calc: Calc;
beforeAll(async () => {
  calc = await startCalc("25.2");
});
afterAll(() => calc.stop());

const writers: Readonly<Record<string, () => Uint8Array | Promise<Uint8Array>>> = {
  XlsxWriter: () => pythonWorkbook("xlsxWriter"),
  "XlsxWriter, 1904": () => pythonWorkbook("xlsxWriter", "1904"),
  openpyxl: () => pythonWorkbook("openpyxl"),
  "openpyxl, 1904": () => pythonWorkbook("openpyxl", "1904"),
  excelize: excelizeWorkbook,
  exceljs: () => exceljsWorkbook(),
  "exceljs, 1904": () => exceljsWorkbook(true),
};

/** Each of them once as it was written, and once as LibreOffice has saved it. */
const books = Object.entries(writers).flatMap(([name, write]) => [
  { name, write },
  { name: `LibreOffice 25.2, from ${name}`, write: async () => savedByCalc(await write()) },
]);

async function savedByCalc(bytes: Uint8Array): Promise<Uint8Array> {
  const [path, copy] = ["given.xlsx", "saved.xlsx"].map((name) => join(calc.folder, name)) as [string, string];
  writeFileSync(path, bytes);
  await calc.read(path, { saveAs: copy, filter: "Calc MS Excel 2007 XML" });
  return readFileSync(copy);
}

describe.each(books)("a workbook of $name", ({ write }) => {
  let before: Uint8Array;
  let worked: Recalculated;
  let inCalc: CalcWorkbook;
  beforeAll(async () => {
    before = await write();
    // Everything, as these writers leave answers beside few of their formulas and LibreOffice beside all.
    worked = await recalculate(openWorkbook(before), engineInNode(), undefined, { all: true });
    const path = join(calc.folder, "worked.xlsx");
    writeFileSync(path, worked.bytes);
    inCalc = await calc.read(path);
  });

  it("changes in its answers and in nothing else", () => {
    expect(changesBeyondAnswers(before, worked.bytes)).toEqual([]);
  });

  it("is worked out to the last formula", () => {
    expect(worked.summary.left).toEqual([]);
    // LibreOffice makes a formula of an error that was typed in.
    expect(worked.summary.errors.filter(({ sheet, address }) => !typedErrors.includes(`${sheet}!${address}`))).toEqual(
      [],
    );
    expect(worked.summary.formulas).toBeGreaterThan(20);
  });

  it.each<[string, (bytes: Uint8Array) => Uint8Array]>([
    ["", (bytes) => bytes],
    [", values that no spreadsheet would come to", withOtherValues],
  ])("keeps to the byte what stands outside the cone of FOOT%s", async (_, change) => {
    const given = change(worked.bytes);
    // Some of the writers leave word that all is to be worked out, since they have not done it.
    const again = await recalculate(
      { ...openWorkbook(given), asksForAll: false },
      engineInNode(() => anotherDay),
    );
    expect(changedOutside(given, again.bytes).changed).toEqual([]);
  });

  it("opens in LibreOffice, which works out the same", () => {
    const expected = sheetCells(worked.bytes);
    expect(differences(compared(inCalc, expected), expected, nearly)).toEqual([]);
  });
});

// Calc fills a pivot table when it opens one, whose cells its writer left empty.
const compared = ({ sheets }: CalcWorkbook, expected: ReadonlyMap<string, Cell>): CalcWorkbook["sheets"] =>
  Object.fromEntries(
    Object.entries(sheets).filter(
      ([name]) => name !== "Pivot" || [...expected.keys()].some((address) => address.startsWith("Pivot!")),
    ),
  );

// The sums of Calc may differ in the last digit.
const nearly = (got: CalcCell, wanted: Cell): boolean =>
  typeof got === "number" && typeof wanted === "number"
    ? Math.abs(got - wanted) <= 1e-12 * Math.abs(wanted)
    : identical(got, wanted);
