import ExcelJs from "exceljs";
import { picture, sheetPlan } from "./sheetPlan.ts";

/**
 * The records and answers as exceljs writes them, with about all else that it can write.
 *
 * @param date1904 - in the 1904 date system
 */
export async function exceljsWorkbook(date1904 = false): Promise<Uint8Array> {
  const { headings, records, beside, answers } = sheetPlan;
  const book = new ExcelJs.Workbook();
  book.creator = "Nobody";
  book.title = "Invented records";
  book.created = new Date("2026-01-02T03:04:05Z");
  book.modified = book.created;
  book.properties.date1904 = date1904;

  const sheet = book.addWorksheet("Records", {
    views: [{ state: "frozen", xSplit: 1, ySplit: 1 }],
    pageSetup: { orientation: "landscape", fitToPage: true, printArea: "A1:H5", printTitlesRow: "1:1" },
    headerFooter: { oddHeader: "&L&A&R&D", oddFooter: "&CPage &P of &N", differentFirst: true, firstHeader: "first" },
    properties: { tabColor: { argb: "FF00AA55" }, defaultRowHeight: 18 },
  });
  sheet.getRow(1).values = [...headings, "Clear", "By hand"];
  sheet.getRow(1).font = { bold: true, color: { argb: "FF224466" } };
  records.forEach(([tag, treated, ...rest], index) => {
    const row = sheet.getRow(index + 2);
    // Written as a date, so that exceljs counts it in the date system of the workbook.
    row.values = [tag, new Date(Date.UTC(1899, 11, 30 + treated)), ...rest];
    row.getCell(2).numFmt = "d mmm yyyy";
    row.getCell(3).numFmt = '0 "days"';
    beside[index]?.forEach((formula, column) => {
      row.getCell(7 + column).value = { formula } as ExcelJs.CellFormulaValue;
    });
  });
  sheet.addTable({
    name: "More",
    ref: "M1",
    headerRow: true,
    totalsRow: true,
    style: { theme: "TableStyleDark3", showRowStripes: true },
    columns: [
      { name: "Group", totalsRowLabel: "all", filterButton: true },
      { name: "Number", totalsRowFunction: "sum" },
    ],
    rows: [
      ["ewes", 3],
      ["lambs", 4],
    ],
  });
  sheet.getCell("J1").value = {
    richText: [{ text: "not " }, { font: { italic: true }, text: "real" }, { text: " sheep  " }],
  };
  sheet.getCell("J2").value = { text: "a page", hyperlink: "https://example.org/a?b=1&c=2", tooltip: "a page" };
  sheet.getCell("J3").value = "<joined> & 'kept'";
  sheet.mergeCells("J3:K4");
  sheet.getCell("J5").note = { texts: [{ font: { bold: true }, text: "what was seen" }] };
  sheet.getCell("J6").value = { error: "#N/A" };
  sheet.getCell("J7").value = true;
  sheet.getCell("D2").dataValidation = {
    type: "list",
    allowBlank: true,
    formulae: ['"footrot,shelly hoof,toe granuloma"'],
    showErrorMessage: true,
    error: "not in the list",
  };
  sheet.getCell("C2").dataValidation = { type: "whole", operator: "between", formulae: [0, 365] };
  sheet.addConditionalFormatting({
    ref: "E2:E5",
    rules: [
      {
        type: "cellIs",
        operator: "greaterThan",
        formulae: [3],
        priority: 1,
        style: { font: { bold: true, color: { argb: "FF9A0511" } } },
      },
      { type: "dataBar", priority: 2, cfvo: [{ type: "min" }, { type: "max" }] } as ExcelJs.ConditionalFormattingRule,
      {
        type: "colorScale",
        priority: 3,
        cfvo: [{ type: "min" }, { type: "max" }],
        color: [{ argb: "FFF8696B" }, { argb: "FF63BE7B" }],
      },
      {
        type: "iconSet",
        iconSet: "3TrafficLights1",
        priority: 4,
        cfvo: [0, 33, 67].map((value) => ({ type: "percent" as const, value })),
      },
    ],
  });
  sheet.autoFilter = "A1:F5";
  sheet.getColumn("Z").outlineLevel = 1;
  sheet.getColumn("Y").hidden = true;
  sheet.getRow(30).outlineLevel = 1;
  sheet.getRow(31).addPageBreak();
  const image = book.addImage({ buffer: Buffer.from(picture) as unknown as ExcelJs.Buffer, extension: "png" });
  sheet.addImage(image, "P1:Q4");
  sheet.addBackgroundImage(image);

  const answering = book.addWorksheet("Answers");
  for (const [cell, formula] of Object.entries(answers)) answering.getCell(cell).value = { formula } as never;
  answering.fillFormula("I1:I4", "Records!E2*2", [8, 2, 0, 14]);
  answering.fillFormula("J1:J4", "FOOT.FLOCKPREV(Records!E2,Records!F2)", [0, 0, 0, 0]);
  const array = { formula: "Records!E2:E5+Records!F2:F5", shareType: "array", ref: "K1:K4" };
  answering.getCell("K1").value = array as never;
  answering.getCell("N1").value = { formula: "SUM(More[Number])" } as never;
  answering.getCell("N3").value = { formula: "LameSheep" } as never;
  book.definedNames.add("Records!$E$2", "LameSheep");
  const hidden = book.addWorksheet("Hidden", { state: "veryHidden" });
  await hidden.protect("invented", { selectLockedCells: true, spinCount: 1000 });
  return new Uint8Array(await book.xlsx.writeBuffer());
}
