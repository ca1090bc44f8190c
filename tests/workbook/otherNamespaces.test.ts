import { strFromU8, unzipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { dayOf } from "../../src/cells/day.ts";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import { readLayout } from "../../src/workbook/parts/readLayout.ts";
import { readLooks } from "../../src/workbook/parts/readLooks.ts";
import { readMetadata } from "../../src/workbook/parts/readMetadata.ts";
import { readStyles } from "../../src/workbook/parts/readStyles.ts";
import { readTable } from "../../src/workbook/parts/readTable.ts";
import { readWorkbookPart } from "../../src/workbook/parts/workbookPart.ts";
import { cellValue } from "../../src/workbook/workbook.ts";
import { buildWorkbook, recalculated, rowsOf } from "./buildWorkbook.ts";

const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const strict = "http://purl.oclc.org/ooxml/spreadsheetml/main";
const x14 = "http://schemas.microsoft.com/office/spreadsheetml/2009/9/main";
const x15 = "http://schemas.microsoft.com/office/spreadsheetml/2010/11/main";
const xm = "http://schemas.microsoft.com/office/excel/2006/main";
const drawing = "http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing";
const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

const extension = (inside: string): string =>
  `<extLst><ext uri="{140A7094-0E35-4892-8432-C4D2E57EDEB5}" xmlns:x14="${x14}" xmlns:x15="${x15}" xmlns:xm="${xm}">${inside}</ext></extLst>`;
const part = (bytes: Uint8Array, name: string): string => strFromU8(unzipSync(bytes)[name] ?? new Uint8Array());

describe("the list of sheets", () => {
  const list = (inside: string): string =>
    `<workbook xmlns="${main}" xmlns:r="${office}"><workbookPr date1904="1"/><sheets><sheet name="One" sheetId="1" r:id="s1"/></sheets>${inside}</workbook>`;
  const moreProperties = extension('<x15:workbookPr chartTrackingRefBase="1"/>');

  it("counts days from 1904 whatever an extension says of the workbook", async () => {
    const { at } = await recalculated(
      buildWorkbook({
        sheets: [{ name: "One", rows: rowsOf({ A1: "=FOOT.CLEARDATE(DATE(2026,2,10),28)" }) }],
        parts: { "xl/workbook.xml": list(moreProperties) },
      }),
    );
    expect(at("A1")).toBe(dayOf("2026-03-11") - 1462);
  });

  it.each([
    ["a prefix", `<x:workbook xmlns:x="${main}"><x:workbookPr date1904="true"/></x:workbook>`],
    ["the strict form", `<workbook xmlns="${strict}"><workbookPr date1904="on"/></workbook>`],
    ["two prefixes", `<workbook xmlns="${main}" xmlns:x="${main}"><x:workbookPr date1904="1"/></workbook>`],
    ["a prefix of its own", `<workbook xmlns="${main}"><y:workbookPr xmlns:y="${main}" date1904="1"/></workbook>`],
    ["no namespace", '<workbook><workbookPr date1904="1"/></workbook>'],
  ])("is read with %s", (_, text) => {
    expect(readWorkbookPart("workbook", text).date1904).toBe(true);
  });

  it("leaves the names of an extension alone", () => {
    const names = `<definedNames><definedName name="target">0.02</definedName></definedNames>${extension(
      '<x14:definedNames><x14:definedName name="target"><xm:f>9</xm:f></x14:definedName></x14:definedNames>',
    )}`;
    expect(readWorkbookPart("workbook", list(names)).names).toEqual([
      { name: "target", text: "0.02", sheet: undefined },
    ]);
  });

  it("leaves elements alone that say themselves that they are of another kind", () => {
    const other = `<extLst><ext><workbookPr xmlns="${x15}" date1904="0"/></ext></extLst><workbookProtection/>`;
    expect(readWorkbookPart("workbook", list(other)).date1904).toBe(true);
  });
});

describe("a sheet", () => {
  const anchor = `<anchor moveWithCells="1"><from xmlns:xdr="${drawing}"><xdr:col>1</xdr:col><xdr:row>2</xdr:row></from><to xmlns:xdr="${drawing}"><xdr:col>3</xdr:col><xdr:row>4</xdr:row></to></anchor>`;
  const controls = `<mc:AlternateContent xmlns:mc="http://schemas.openxmlformats.org/markup-compatibility/2006"><mc:Choice Requires="x14"><controls><mc:AlternateContent><mc:Choice Requires="x14"><control shapeId="1025" r:id="c1" name="Button 1"><controlPr defaultSize="0" macro="[0]!press">${anchor}</controlPr></control></mc:Choice></mc:AlternateContent></controls></mc:Choice></mc:AlternateContent>`;

  it("with buttons keeps them byte for byte when cells change", async () => {
    const after = `<pageMargins left="0.7" right="0.7" top="0.75" bottom="0.75" header="0.3" footer="0.3"/>${controls}`;
    const { before, xml, at } = await recalculated(
      buildWorkbook({
        sheets: [{ name: "One", rows: rowsOf({ A1: "=FOOT.PREVRANGE(4,20)", A3: 1, B3: "=A3+1" }), after }],
      }),
    );
    expect(before.sheets[0]?.rows.map(({ row }) => row)).toEqual([0, 2]);
    expect(xml().endsWith(`</sheetData>${after}</worksheet>`)).toBe(true);
    expect(at("B3")).toBe(2);
  });

  it("takes rows and cells only from where its cells are", () => {
    const after = '<odd><row r="7"><c r="A7"><v>7</v></c></row></odd>';
    const [sheet] = openWorkbook(buildWorkbook({ sheets: [{ name: "One", rows: rowsOf({ A1: 1 }), after }] })).sheets;
    expect(sheet?.rows.map(({ row, cells }) => [row, cells.length])).toEqual([[0, 1]]);
  });

  it("takes no value and no formula from what a cell's extension holds", async () => {
    const rows = `<row r="1"><c r="A1"><f>1+1</f><v>9</v>${extension("<x14:f>7</x14:f><v>5</v><f>8</f><is><t>x</t></is>")}</c></row>`;
    const { at, xml, before } = await recalculated(buildWorkbook({ sheets: [{ name: "One", rows }] }));
    expect(before.sheets[0]?.rows[0]?.cells[0]).toMatchObject({ value: 9, formula: { text: "1+1" } });
    expect(at("A1")).toBe(2);
    expect(xml()).toContain("<f>1+1</f><v>2</v><extLst>");
  });

  it("whose rows carry another prefix than the sheet is read", () => {
    const text = `<worksheet xmlns="${main}" xmlns:x="${main}"><x:sheetData><x:row r="1"><x:c r="A1"><x:v>4</x:v></x:c></x:row></x:sheetData></worksheet>`;
    const [sheet] = openWorkbook(
      buildWorkbook({ sheets: [{ name: "One", rows: "" }], parts: { "xl/worksheets/sheet1.xml": text } }),
    ).sheets;
    expect(sheet && cellValue(sheet, 0, 0)).toBe(4);
  });

  it("is frozen as it is shown, not as in a view that somebody kept", () => {
    const text = `<worksheet xmlns="${main}"><sheetViews><sheetView><pane ySplit="4" state="frozen"/></sheetView></sheetViews><sheetData/><customSheetViews><customSheetView guid="{1}"><pane xSplit="2" ySplit="9" state="frozen"/></customSheetView></customSheetViews></worksheet>`;
    expect(readLayout("sheet", text).frozen).toEqual({ rows: 4, columns: 0 });
  });
});

describe("the marks of cells", () => {
  it.each(["xda:", "d:", ""])("are known by whatever prefix an extension has: %s", (prefix) => {
    const mark = (prefix: string, said: string): string =>
      `<metadata xmlns="${main}"><metadataTypes count="1"><metadataType name="XLDAPR" cellMeta="1"/></metadataTypes><futureMetadata name="XLDAPR" count="1"><bk><extLst><ext uri="{1}"><${prefix}dynamicArrayProperties xmlns${prefix ? `:${prefix.slice(0, -1)}` : ""}="http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray"${said}/></ext></extLst></bk></futureMetadata><cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata></metadata>`;
    const marks = (said: string) => [...readMetadata("metadata", mark(prefix, said)).dynamic];
    expect([' fDynamic="1"', "", ' fDynamic="true"', ' fDynamic="0"', ' fDynamic="false"'].map(marks)).toEqual([
      [1],
      [1],
      [1],
      [],
      [],
    ]);
  });
});

describe("a table", () => {
  it("is opened with the text that an extension gives it", async () => {
    const table = `<table xmlns="${main}" id="1" name="Gathers" displayName="Gathers" ref="A1:B2"><tableColumns count="2"><tableColumn id="1" name="Lame"/><tableColumn id="2" name="Seen">${extension('<x15:tableColumn name="Other"/>')}</tableColumn></tableColumns>${extension('<x14:table altText="Counts" altTextSummary="Lame and seen"/>')}</table>`;
    expect(readTable("table", table)).toMatchObject({ name: "Gathers", columns: ["Lame", "Seen"] });
    const rows = rowsOf({ A1: "Lame", B1: "Seen", A2: 4, B2: 20, D1: "=FOOT.FLOCKPREV(Gathers[Lame],Gathers[Seen])" });
    const { at } = await recalculated(buildWorkbook({ sheets: [{ name: "One", rows, tables: [table] }] }));
    expect(at("D1")).toBe(0.2);
  });
});

describe("styles", () => {
  const conditional = (code: string): string =>
    `<dxfs count="1"><dxf><font><b/></font><numFmt numFmtId="164" formatCode="${code}"/></dxf></dxfs>`;
  const styles = (before: string, after: string): string =>
    `<styleSheet xmlns="${main}">${before}<fonts count="1"><font/></fonts><fills count="1"><fill/></fills><borders count="1"><border/></borders><cellXfs count="1"><xf numFmtId="0" fontId="0" xfId="0"/></cellXfs>${after}</styleSheet>`;
  const cleared = (text: string) =>
    recalculated(
      buildWorkbook({ sheets: [{ name: "One", rows: rowsOf({ A1: "=FOOT.CLEARDATE(46000,28)" }) }], styles: text }),
    );

  it("give a date its format though a conditional format has the same", async () => {
    const { bytes } = await cleared(styles("", conditional("d mmm yyyy")));
    const text = part(bytes, "xl/styles.xml");
    expect(text).toContain('<numFmts count="1"><numFmt numFmtId="165" formatCode="d mmm yyyy"/></numFmts><fonts');
    expect(text).toContain('<xf numFmtId="165" fontId="0" xfId="0" applyNumberFormat="1"/></cellXfs>');
  });

  it("count the cells' formats without those of conditional formats", async () => {
    const own = '<numFmts count="1"><numFmt numFmtId="170" formatCode="0.000"/></numFmts>';
    const { bytes } = await cleared(styles(own, conditional("0.0000")));
    expect(part(bytes, "xl/styles.xml")).toContain(
      '<numFmts count="2"><numFmt numFmtId="170" formatCode="0.000"/><numFmt numFmtId="171" formatCode="d mmm yyyy"/></numFmts>',
    );
  });

  it("take a cell's format for what the list says, not for what a conditional format says under its number", () => {
    const own = '<numFmts count="1"><numFmt numFmtId="164" formatCode="0.000"/></numFmts>';
    const text = styles(own, conditional("General"));
    expect(readStyles("styles", text).numberFormats).toEqual(new Map([[164, "0.000"]]));
    expect(readLooks("styles", text.replace('xf numFmtId="0"', 'xf numFmtId="164"'), [])[0]?.format).toBe("0.000");
  });

  it("do not let the looks of an extension into those of cells", () => {
    const looks = extension(
      '<x14:dxfs count="1"><dxf><font><b/><sz val="99"/></font><fill><patternFill><fgColor rgb="FFFF0000"/></patternFill></fill><border><left style="thick"/></border><numFmt numFmtId="164" formatCode="@"/></dxf></x14:dxfs>',
    );
    const text = styles('<numFmts count="1"><numFmt numFmtId="164" formatCode="0.000"/></numFmts>', looks);
    expect(readLooks("styles", text.replace('xf numFmtId="0"', 'xf numFmtId="164"'), [])).toEqual([
      expect.objectContaining({ bold: false, size: undefined, edges: {}, format: "0.000" }),
    ]);
    expect(readStyles("styles", text)).toMatchObject({ numberFormats: new Map([[164, "0.000"]]) });
  });

  it("know yes in each of the words of the format", () => {
    const look = (value: string) =>
      readLooks(
        "styles",
        `<styleSheet xmlns="${main}"><cellXfs><xf><alignment wrapText="${value}"/></xf></cellXfs></styleSheet>`,
        [],
      );
    expect(["1", "true", "on", "0", "false", "off"].map((value) => look(value)[0]?.wraps)).toEqual([
      true,
      true,
      true,
      false,
      false,
      false,
    ]);
  });
});
