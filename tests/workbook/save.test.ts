import { strFromU8, unzipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { dayOf } from "../../src/cells/day.ts";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import { buildWorkbook, recalculated, rowsOf } from "./buildWorkbook.ts";

const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const text = (bytes: Uint8Array, part: string): string => strFromU8(unzipSync(bytes)[part] ?? new Uint8Array());

describe("saving", () => {
  it("gives dates and shares a format where the cell has none of its own", async () => {
    const day = dayOf("2026-03-14");
    const rows = `<row r="1"><c r="A1"><v>${day}</v></c><c r="B1"><f>FOOT.CLEARDATE(A1,28)</f></c><c r="C1" s="1"><f>FOOT.CLEARDATE(A1,28)</f></c><c r="D1" s="2"><f>FOOT.FLOCKPREV(1,4)</f></c><c r="E1"><f>FOOT.FLOCKPREV(1,4)*100</f></c><c r="F1"><f>FOOT.CLEARDATE(A1,7)</f></c><c r="G1"><f>FOOT.TAGKEY("ZZ 123")</f></c></row>`;
    const { workbook, bytes } = await recalculated(buildWorkbook({ sheets: [{ name: "One", rows }] }));
    const formats = workbook.sheets[0]?.rows[0]?.cells.map(({ style }) => {
      const number = workbook.styles?.formats[style]?.numberFormat ?? -1;
      return workbook.styles?.numberFormats.get(number) ?? number;
    });
    expect(formats).toEqual([0, "d mmm yyyy", 14, "0.0%", 0, "d mmm yyyy", 0]);
    const stylesText = text(bytes, "xl/styles.xml");
    expect(stylesText).toContain(
      '<numFmts count="2"><numFmt numFmtId="164" formatCode="d mmm yyyy"/><numFmt numFmtId="165" formatCode="0.0%"/></numFmts><fonts',
    );
    expect(stylesText).toContain('<cellXfs count="5">');
    expect(stylesText).toContain(
      '<xf numFmtId="165" fontId="1" xfId="0" applyNumberFormat="1"><alignment horizontal="center"/></xf></cellXfs>',
    );
  });

  it("gives no file that this program would not open again, however alike the answers are", async () => {
    // 500 texts of one letter are 16 MB, and pack to less than a part in 300.
    const rows = Array.from(
      { length: 500 },
      (_, index) => `<row r="${index + 1}"><c r="A${index + 1}"><f>REPT("x",32767)</f></c></row>`,
    ).join("");
    const { workbook } = await recalculated(buildWorkbook({ sheets: [{ name: "One", rows }] }));
    expect(workbook.sheets[0]?.rows.at(-1)?.cells[0]?.value).toBe("x".repeat(32_767));
  });

  it("formats the columns of a table, but not its headings", async () => {
    const { workbook } = await recalculated(
      buildWorkbook({
        sheets: [{ name: "One", rows: rowsOf({ A1: "x", B1: 1, C1: 10, E1: "=FOOT.PREVBY(A1:A1,B1:B1,C1:C1)" }) }],
      }),
    );
    const style = (row: number, column: number) =>
      workbook.sheets[0]?.rows[row]?.cells.find((cell) => cell.column === column)?.style;
    expect(style(0, 7)).toBe(0);
    expect(style(1, 7)).toBeGreaterThan(2);
    expect(style(1, 7)).toBe(style(2, 7));
  });

  it("drops the calculation chain with what points to it once a formula is another", async () => {
    const chain = {
      parts: { "xl/calcChain.xml": '<calcChain xmlns="x"><c r="A1" i="1"/></calcChain>' },
      links: `<Relationship Id="cc" Type="${office}/calcChain" Target="calcChain.xml"/>`,
      types:
        '<Override PartName="/xl/calcChain.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.calcChain+xml"/>',
    };
    const changed = await recalculated(
      buildWorkbook({ sheets: [{ name: "One", rows: rowsOf({ A1: "=FOOT.FLOCKPREV(1,2)" }) }], ...chain }),
    );
    expect(Object.keys(unzipSync(changed.bytes))).not.toContain("xl/calcChain.xml");
    expect(text(changed.bytes, "xl/_rels/workbook.xml.rels")).not.toContain("calcChain");
    expect(text(changed.bytes, "[Content_Types].xml")).not.toContain("calcChain");
    const same = await recalculated(
      buildWorkbook({ sheets: [{ name: "One", rows: rowsOf({ A1: "=1+1" }) }], ...chain }),
    );
    expect(same.at("A1")).toBe(2);
    expect(text(same.bytes, "xl/calcChain.xml")).toContain("<c r=");
  });

  it("adds the mark of dynamic arrays where the file has none, and beside other marks", async () => {
    const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    const rich = `<metadata xmlns="${main}"><metadataTypes count="1"><metadataType name="XLRICHVALUE" cellMeta="1"/></metadataTypes><futureMetadata name="XLRICHVALUE" count="1"><bk/></futureMetadata><cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata></metadata>`;
    const { xml, bytes, workbook } = await recalculated(
      buildWorkbook({
        sheets: [{ name: "One", rows: rowsOf({ A1: "=FOOT.FLOCKPREV(1,2)" }) }],
        parts: { "xl/metadata.xml": rich },
      }),
    );
    expect(xml()).toContain('cm="2"');
    expect([...(workbook.metadata?.dynamic ?? [])]).toEqual([2]);
    expect(text(bytes, "xl/metadata.xml")).toContain('<metadataTypes count="2">');
    expect(text(bytes, "xl/metadata.xml")).toContain(
      '<cellMetadata count="2"><bk><rc t="1" v="0"/></bk><bk><rc t="2" v="0"/></bk></cellMetadata>',
    );
  });

  it("changes no byte outside the cells that changed", async () => {
    const rows =
      '<row r="1" spans="1:3" ht="20"  customHeight="1">\r\n <c r="A1"  s="1" ><v>4</v></c ><!-- a remark --><c r="B1" ph="1"><v>2</v></c>\n<c r="C1" s="2"><f ca="1">A1+B1</f><v>5</v></c><c r="D1"><f>A1*1</f><v>4.0</v></c></row>';
    const before = buildWorkbook({ sheets: [{ name: "One", rows }] });
    const { bytes, summary } = await recalculated(before);
    const part = "xl/worksheets/sheet1.xml";
    expect(text(bytes, part)).toBe(
      text(before, part).replace('<f ca="1">A1+B1</f><v>5</v>', '<f ca="1">A1+B1</f><v>6</v>'),
    );
    expect(summary.changedParts).toEqual([part]);
    expect(summary.changedCells).toBe(1);
  });

  it("writes sheets whose elements carry a prefix", async () => {
    const sheet =
      '<?xml version="1.0"?><x:worksheet xmlns:x="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><x:sheetData><x:row r="1"><x:c r="A1"><x:f>FOOT.PREVRANGE(1,2)</x:f></x:c></x:row></x:sheetData></x:worksheet>';
    const { xml, at } = await recalculated(
      buildWorkbook({ sheets: [{ name: "One", rows: "" }], parts: { "xl/worksheets/sheet1.xml": sheet } }),
    );
    expect(xml()).toContain('<x:f t="array" ref="A1:B1">_xldudf_FOOT_PREVRANGE(1,2)</x:f>');
    expect(at("B1")).toBeGreaterThan(0.5);
  });

  it("adds the mark of dynamic arrays with the prefix of the part", async () => {
    const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    const rich = `<x:metadata xmlns:x="${main}"><x:metadataTypes count="1"><x:metadataType name="XLRICHVALUE" cellMeta="1"/></x:metadataTypes></x:metadata>`;
    const { bytes, workbook } = await recalculated(
      buildWorkbook({
        sheets: [{ name: "One", rows: rowsOf({ A1: "=FOOT.FLOCKPREV(1,2)" }) }],
        parts: { "xl/metadata.xml": rich },
      }),
    );
    expect([...(workbook.metadata?.dynamic ?? [])]).toEqual([1]);
    expect(text(bytes, "xl/metadata.xml")).not.toMatch(/<(?!\/?(?:x|xda):)/);
  });

  it("keeps the parts in their order and every other part as it was", async () => {
    const before = buildWorkbook({
      sheets: [
        { name: "One", rows: rowsOf({ A1: "=FOOT.FLOCKPREV(1,2)" }) },
        { name: "Two", rows: rowsOf({ A1: 1 }) },
      ],
      parts: {
        "12": "a part named by a number",
        "xl/odd/thing.bin": new Uint8Array([0, 255, 1]),
        "../../escape.txt": "harmless",
      },
    });
    const { bytes, summary } = await recalculated(before);
    const [old, now] = [unzipSync(before), unzipSync(bytes)];
    expect(Object.keys(now)).toEqual(Object.keys(old));
    const differing = Object.keys(old).filter(
      (part) => strFromU8(old[part] as Uint8Array) !== strFromU8(now[part] as Uint8Array),
    );
    expect(differing).toEqual(["xl/worksheets/sheet1.xml", "xl/styles.xml"]);
    expect(summary.untouched).toEqual(["3 parts of a kind not known here"]);
    expect(openWorkbook(bytes).sheets.map(({ name }) => name)).toEqual(["One", "Two"]);
  });
});
