import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import { readLayout } from "../../src/workbook/parts/readLayout.ts";
import { readLooks, readThemeColors } from "../../src/workbook/parts/readLooks.ts";
import { writeEdits } from "../../src/workbook/saving/writeEdits.ts";
import { cellValue } from "../../src/workbook/workbook.ts";
import { buildWorkbook, recalculated, rowsOf } from "./buildWorkbook.ts";

const book = openWorkbook(readFileSync("samples/flock-foot-book.xlsx"));
const placeOf = (name: string): number => book.sheets.findIndex((sheet) => sheet.name === name);
const cellAt = (workbook: typeof book, sheet: number, row: number, column: number) =>
  workbook.sheets[sheet]?.rows.find((line) => line.row === row)?.cells.find((cell) => cell.column === column);

describe("cells typed anew", () => {
  it("stand in the file, with formulas as the file spells them; other cells stay", () => {
    const settings = placeOf("Settings");
    const bytes = writeEdits(book, [
      { sheet: settings, row: 3, column: 1, value: "A & B <flock>" },
      { sheet: settings, row: 59, column: 30, value: null, formula: "FOOT.FLOCKPREV(4,20)", format: "0.0%" },
      { sheet: settings, row: 60, column: 0, value: true },
      { sheet: settings, row: 7, column: 1, value: null },
    ]);
    const after = openWorkbook(bytes);
    const sheet = after.sheets[settings];
    if (!sheet) throw new Error("the sheet is gone");
    expect(cellValue(sheet, 3, 1)).toBe("A & B <flock>");
    expect(cellAt(after, settings, 59, 30)?.formula?.text).toBe("_xldudf_FOOT_FLOCKPREV(4,20)");
    expect(cellValue(sheet, 60, 0)).toBe(true);
    expect(cellValue(sheet, 7, 1)).toBe(null);
    expect(cellValue(sheet, 6, 1)).toBe(cellValue(book.sheets[settings] ?? sheet, 6, 1));
    const looks = readLooks("styles", after.styles?.text ?? "", []);
    expect(looks[cellAt(after, settings, 59, 30)?.style ?? 0]?.format).toBe("0.0%");
    // A changed value leaves the look of its cell alone.
    expect(cellAt(after, settings, 3, 1)?.style).toBe(cellAt(book, settings, 3, 1)?.style);
  });

  it("that replace an array formula take what it filled away", () => {
    const cases = placeOf("Cases");
    const anchor = book.sheets[cases]?.rows
      .flatMap(({ cells }) => cells)
      .find(({ formula }) => formula?.kind === "array" && (formula.area?.bottom ?? 0) > (formula.area?.top ?? 0));
    if (!anchor?.formula?.area) throw new Error("there is no array formula");
    const { row, column } = anchor;
    expect(cellAt(book, cases, row + 1, column)?.value).not.toBe(null);
    const after = openWorkbook(writeEdits(book, [{ sheet: cases, row, column, value: 1 }]));
    expect(cellAt(after, cases, row, column)?.value).toBe(1);
    expect(cellAt(after, cases, row, column)?.formula).toBeUndefined();
    expect(cellAt(after, cases, row + 1, column)?.value ?? null).toBe(null);
  });

  it("none: every part keeps its bytes", () => {
    const after = openWorkbook(writeEdits(book, []));
    expect(after.files.entries.map(({ name, bytes }) => [name, bytes.length])).toEqual(
      book.files.entries.map(({ name, bytes }) => [name, bytes.length]),
    );
  });
});

const built = (rows: string) => openWorkbook(buildWorkbook({ sheets: [{ name: "Flock", rows }] }));

describe("a formula that others rest on, typed over", () => {
  const shared = `<row r="1"><c r="A1"><v>1</v></c><c r="B1"><f t="shared" ref="B1:B3" si="0">A1*2</f><v>2</v></c></row>
    <row r="2"><c r="A2"><v>2</v></c><c r="B2"><f t="shared" si="0"/><v>4</v></c></row>
    <row r="3"><c r="A3"><v>3</v></c><c r="B3"><f t="shared" si="0"/><v>6</v></c></row>`;

  it("leaves those that share it with a text of their own", async () => {
    const bytes = writeEdits(built(shared), [
      { sheet: 0, row: 0, column: 1, value: 7 },
      { sheet: 0, row: 1, column: 1, value: null, formula: "A2+100" },
    ]);
    const { at, workbook } = await recalculated(bytes);
    expect([at("B1"), at("B2"), at("B3")]).toEqual([7, 102, 6]);
    expect(cellAt(workbook, 0, 2, 1)?.formula?.text).toBe("A3*2");
  });

  const spill = `<row r="1"><c r="A1"><v>3</v></c><c r="C1" cm="1"><f t="array" ref="C1:C3">_xlfn.SEQUENCE(A1)</f><v>1</v></c></row>
    <row r="2"><c r="C2"><v>2</v></c></row><row r="3"><c r="C3"><v>3</v></c></row>`;

  it("keeps what is typed into a cell that it fills, and then has no room", async () => {
    const bytes = writeEdits(built(spill), [{ sheet: 0, row: 1, column: 2, value: "mine" }]);
    const { at, workbook } = await recalculated(bytes);
    expect([at("C1"), at("C2"), at("C3")]).toEqual([{ error: "#SPILL!" }, "mine", null]);
    expect(cellAt(workbook, 0, 0, 2)).toMatchObject({ dynamic: true, formula: { text: "_xlfn.SEQUENCE(A1)" } });
    const cleared = await recalculated(writeEdits(workbook, [{ sheet: 0, row: 1, column: 2, value: null }]));
    expect([cleared.at("C1"), cleared.at("C2"), cleared.at("C3")]).toEqual([1, 2, 3]);
  });

  it("takes the old order of calculation away, which names it", () => {
    const chain = "application/vnd.openxmlformats-officedocument.spreadsheetml.calcChain+xml";
    const workbook = openWorkbook(
      buildWorkbook({
        sheets: [{ name: "Flock", rows: rowsOf({ A1: 1, B1: "=A1*2", B2: "=A1*3" }) }],
        parts: { "xl/calcChain.xml": '<calcChain><c r="B1" i="1"/><c r="B2"/></calcChain>' },
        links: `<Relationship Id="chain" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/calcChain" Target="calcChain.xml"/>`,
        types: `<Override PartName="/xl/calcChain.xml" ContentType="${chain}"/>`,
      }),
    );
    const named = ({ files }: typeof workbook) => [
      files.has("xl/calcChain.xml"),
      files.text("xl/_rels/workbook.xml.rels").includes("calcChain"),
      files.text("[Content_Types].xml").includes("calcChain"),
    ];
    expect(named(openWorkbook(writeEdits(workbook, [{ sheet: 0, row: 0, column: 0, value: 5 }])))).toEqual([
      true,
      true,
      true,
    ]);
    expect(named(openWorkbook(writeEdits(workbook, [{ sheet: 0, row: 0, column: 1, value: 5 }])))).toEqual([
      false,
      false,
      false,
    ]);
  });
});

it("a formula that may give more than one cell is stored as Excel stores it, so that it is not cut down to one", async () => {
  const rows = rowsOf({ A1: 1, B1: 10, A2: 2, B2: 20, A3: 3, B3: 30 });
  const bytes = writeEdits(built(rows), [
    { sheet: 0, row: 0, column: 3, value: null, formula: "SUM(A1:A3*B1:B3)", array: true },
    { sheet: 0, row: 4, column: 0, value: null, formula: "A1:A3*2", array: true },
    { sheet: 0, row: 0, column: 4, value: null, formula: "SUM(A1:A3)" },
  ]);
  const { at, workbook } = await recalculated(bytes);
  expect([at("D1"), at("A5"), at("A6"), at("A7"), at("E1")]).toEqual([140, 2, 4, 6, 6]);
  expect(cellAt(workbook, 0, 0, 3)).toMatchObject({ dynamic: true, formula: { kind: "array" } });
  expect(cellAt(workbook, 0, 4, 0)).toMatchObject({ dynamic: true, formula: { area: { top: 4, bottom: 6 } } });
  expect(cellAt(workbook, 0, 0, 4)).toMatchObject({ dynamic: false, formula: { kind: "plain" } });
});

describe("how cells look", () => {
  const styles = (inside: string): string =>
    `<styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">${inside}</styleSheet>`;

  it("fonts, fills, edges, alignment and number formats", () => {
    const [plain, full] = readLooks(
      "styles",
      styles(`<numFmts><numFmt numFmtId="164" formatCode="d mmm yyyy"/></numFmts>
        <fonts><font><sz val="11"/><name val="Calibri"/></font><font><b/><i val="0"/><color theme="1" tint="0.5"/></font></fonts>
        <fills><fill><patternFill/></fill><fill><patternFill patternType="gray125"/></fill><fill><patternFill patternType="solid"><fgColor rgb="FFFFF8DC"/></patternFill></fill></fills>
        <borders><border/><border><left style="thin"><color rgb="FF112233"/></left><right/></border></borders>
        <cellStyleXfs><xf numFmtId="9" fontId="1"/></cellStyleXfs>
        <cellXfs><xf numFmtId="0" fontId="0" fillId="1" borderId="0"/><xf numFmtId="164" fontId="1" fillId="2" borderId="1"><alignment horizontal="center" wrapText="1"/></xf></cellXfs>
        <dxfs><dxf><font><b/></font><fill><patternFill><bgColor rgb="FF00FF00"/></patternFill></fill></dxf></dxfs>`),
      ["#ffffff", "#000000"],
    );
    expect(plain).toMatchObject({
      bold: false,
      font: "Calibri",
      size: 11,
      fill: undefined,
      format: undefined,
      edges: {},
    });
    expect(full).toMatchObject({
      bold: true,
      italic: false,
      color: "#808080",
      fill: "#FFF8DC",
      horizontal: "center",
      wraps: true,
      format: "d mmm yyyy",
      edges: { left: { line: "thin", color: "#112233" } },
    });
  });

  it("theme colours change places as spreadsheets do it", () => {
    const theme = `<theme><clrScheme><dk1><sysClr lastClr="000001"/></dk1><lt1><sysClr lastClr="FFFFFE"/></lt1><dk2><srgbClr val="111111"/></dk2><lt2><srgbClr val="EEEEEE"/></lt2><accent1><srgbClr val="4472C4"/></accent1></clrScheme></theme>`;
    expect(readThemeColors("theme", theme)).toEqual(["#FFFFFE", "#000001", "#EEEEEE", "#111111", "#4472C4"]);
  });

  it("widths, heights and frozen rows", () => {
    const text = `<worksheet><sheetViews><sheetView showGridLines="0"><pane ySplit="4" xSplit="1" state="frozen"/></sheetView></sheetViews>
      <sheetFormatPr defaultRowHeight="15"/><cols><col min="2" max="3" width="28"/></cols><sheetData><row r="1" ht="28"/><row r="2" hidden="1"/></sheetData></worksheet>`;
    expect(readLayout("sheet", text)).toEqual({
      widths: [{ from: 1, to: 2, width: 28, hidden: false }],
      heights: new Map([[0, 28]]),
      hiddenRows: new Set([1]),
      usualWidth: undefined,
      usualHeight: 15,
      frozen: { rows: 4, columns: 1 },
      gridLines: false,
    });
  });
});
