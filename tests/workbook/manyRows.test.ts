import { describe, expect, it } from "vitest";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import type { CellChange } from "../../src/workbook/saving/cellChange.ts";
import { spliceSheet } from "../../src/workbook/saving/spliceSheet.ts";
import { buildWorkbook, recalculated } from "./buildWorkbook.ts";

const sheetOf = (rows: string) => {
  const [sheet] = openWorkbook(buildWorkbook({ sheets: [{ name: "One", rows }] })).sheets;
  if (!sheet) throw new Error("the workbook has no sheet");
  return sheet;
};
const put = (row: number, value: number): CellChange => ({
  row,
  column: 0,
  old: undefined,
  value,
  style: 0,
  formula: undefined,
});
const rowNumbers = (text: string): readonly number[] =>
  [...text.matchAll(/<row r="(\d+)"/g)].map(([, row]) => Number(row));

describe("rows that do not say where they stand", () => {
  it.each(["<row/>", "<row />", '<row ht="20"/>', "<row></row>"])("are filled by a spill: %s", async (row) => {
    const rows = `<row><c><f>_xlfn.SEQUENCE(3)</f></c></row>${row}${row}`;
    const { at, xml } = await recalculated(buildWorkbook({ sheets: [{ name: "One", rows }] }));
    expect(["A1", "A2", "A3"].map((address) => at(address))).toEqual([1, 2, 3]);
    expect(xml()).toMatch(/<row r="2"[^>]*><c r="A2"><v>2<\/v><\/c><\/row>/);
  });

  it("keep their own prefix", () => {
    const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    const text = `<worksheet xmlns="${main}" xmlns:x="${main}"><sheetData><x:row/><x:row><x:c/></x:row></sheetData></worksheet>`;
    const [sheet] = openWorkbook(
      buildWorkbook({ sheets: [{ name: "One", rows: "" }], parts: { "xl/worksheets/sheet1.xml": text } }),
    ).sheets;
    expect(sheet && spliceSheet(sheet, [put(0, 1)])).toContain(
      '<sheetData><x:row r="1"><c r="A1"><v>1</v></c></x:row><x:row r="2"><x:c r="A2"/></x:row></sheetData>',
    );
  });
});

describe("new rows", () => {
  it("may be more than a call can be given at once", () => {
    const many = 150_000;
    const text = spliceSheet(
      sheetOf('<row r="1"><c r="A1"><v>1</v></c></row>'),
      Array.from({ length: many }, (_, index) => put(index + 1, index)),
    );
    expect(rowNumbers(text)).toHaveLength(many + 1);
    expect(text).toContain(`<row r="${many + 1}"><c r="A${many + 1}"><v>${many - 1}</v></c></row></sheetData>`);
  });

  it("come between those there are, in order", () => {
    const sheet = sheetOf('<row r="2"><c r="A2"><v>1</v></c></row><row r="5"/><row r="9"/>');
    const text = spliceSheet(
      sheet,
      [9, 2, 0, 3, 11].map((row) => put(row, row)),
    );
    expect(rowNumbers(text)).toEqual([1, 2, 3, 4, 5, 9, 10, 12]);
  });
});
