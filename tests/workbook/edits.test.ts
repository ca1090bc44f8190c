import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import { readLayout } from "../../src/workbook/parts/readLayout.ts";
import { readLooks, readThemeColors } from "../../src/workbook/parts/readLooks.ts";
import { writeEdits } from "../../src/workbook/saving/writeEdits.ts";
import { cellValue } from "../../src/workbook/workbook.ts";

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
