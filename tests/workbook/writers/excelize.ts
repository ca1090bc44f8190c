import { createRequire } from "node:module";
import { init } from "excelize-wasm";
import { picture, sheetPlan } from "./sheetPlan.ts";

const require = createRequire(import.meta.url);

const ok = <T extends { error: string | null }>(answer: T): T => {
  if (answer.error !== null) throw new Error(`excelize: ${answer.error}`);
  return answer;
};

/** The records and answers as excelize writes them, with about all else that it can write. */
export async function excelizeWorkbook(): Promise<Uint8Array> {
  const { NewFile, ...kinds } = await init(require.resolve("excelize-wasm/excelize.wasm.gz"));
  const file = NewFile();
  const { headings, records, beside, answers } = sheetPlan;
  ok(file.SetSheetName("Sheet1", "Records"));
  for (const sheet of ["Answers", "Pictures", "Pivot", "Hidden"]) ok(file.NewSheet(sheet));

  const { style: date } = ok(file.NewStyle({ NumFmt: 14 }));
  const { style: own } = ok(
    file.NewStyle({ CustomNumFmt: '0.0 "ml"', Font: { Bold: true, Color: "AA3311" } } as never),
  );
  const { style: shaded } = ok(file.NewStyle({ Fill: { Type: "gradient", Color: ["FFFFFF", "E0EBF5"], Shading: 1 } }));
  ok(file.SetSheetRow("Records", "A1", [...headings, "Clear", "By hand"]));
  records.forEach((record, index) => {
    const row = index + 2;
    ok(file.SetSheetRow("Records", `A${row}`, [...record]));
    ok(file.SetCellFormula("Records", `G${row}`, beside[index]?.[0] ?? ""));
    ok(file.SetCellFormula("Records", `H${row}`, beside[index]?.[1] ?? ""));
  });
  ok(file.SetCellStyle("Records", "B2", `B${records.length + 1}`, date));
  ok(file.SetCellStyle("Records", "C2", `C${records.length + 1}`, own));
  ok(file.SetCellStyle("Records", "A1", "H1", shaded));
  ok(file.AddTable("Records", { Range: `A1:F${records.length + 1}`, Name: "Cases", StyleName: "TableStyleMedium2" }));
  for (const [cell, formula] of Object.entries(answers)) ok(file.SetCellFormula("Answers", cell, formula));
  ok(file.SetCellFormula("Answers", "N1", "SUM(Cases[Lame])/SUM(Cases[Seen])"));
  ok(file.SetCellFormula("Answers", "N2", "FOOT.FLOCKPREV(Cases[Lame],Cases[Seen])"));
  ok(file.SetCellFormula("Answers", "N3", "LameSheep*2"));
  const shared = { Type: "shared", Ref: "I1:I4" };
  ok(file.SetCellFormula("Answers", "I1", "Records!E2*2", shared));
  ok(file.SetCellFormula("Answers", "J1", "FOOT.FLOCKPREV(Records!E2,Records!F2)", { Type: "shared", Ref: "J1:J4" }));
  ok(file.SetCellFormula("Answers", "K1", "Records!E2:E5+Records!F2:F5", { Type: "array", Ref: "K1:K4" }));

  ok(file.SetDefinedName({ Name: "LameSheep", RefersTo: "SUM(Records!$E$2:$E$5)", Comment: "all of them" } as never));
  ok(file.SetDefinedName({ Name: "Here", RefersTo: "Answers!$A$1", Scope: "Answers" }));
  ok(
    file.AddDataValidation("Records", {
      Sqref: "D2:D5",
      Type: "list",
      Formula1: '"footrot,shelly hoof,toe granuloma"',
      ShowErrorMessage: true,
      ErrorTitle: "Lesion",
      Error: "not in the list",
      ErrorStyle: "stop",
    }),
  );
  const { style: bold } = ok(file.NewConditionalStyle({ Font: { Bold: true, Color: "9A0511" } }));
  ok(file.SetConditionalFormat("Records", "E2:E5", [{ Type: "cell", Criteria: ">", Format: bold, Value: "3" }]));
  const least = { MinType: "min", MaxType: "max" };
  ok(
    file.SetConditionalFormat("Records", "F2:F5", [
      { Type: "data_bar", Criteria: "=", ...least, BarColor: "638EC6", BarSolid: true, BarBorderColor: "000000" },
    ]),
  );
  ok(
    file.SetConditionalFormat("Records", "C2:C5", [
      {
        Type: "3_color_scale",
        Criteria: "=",
        ...least,
        MidType: "percentile",
        MidValue: "50",
        MinColor: "F8696B",
        MidColor: "FFEB84",
        MaxColor: "63BE7B",
      } as never,
    ]),
  );
  ok(file.SetConditionalFormat("Answers", "I1:I4", [{ Type: "icon_set", IconStyle: "3Arrows" }]));
  ok(
    file.AddComment("Records", {
      Cell: "D1",
      Author: "Invented",
      Paragraph: [{ Text: "what was " }, { Text: "seen", Font: { Bold: true } }],
    }),
  );
  ok(
    file.SetCellRichText("Records", "J1", [
      { Text: "not " },
      { Text: "real", Font: { Italic: true, Color: "2354E8" } },
      { Text: " sheep  " },
    ]),
  );
  ok(file.SetCellHyperLink("Records", "J2", "https://example.org/a?b=1&c=2", "External", { Tooltip: "a page" }));
  ok(file.SetCellStr("Records", "J2", "a page"));
  ok(file.SetCellHyperLink("Records", "J3", "Answers!A1", "Location"));
  ok(file.MergeCell("Records", "J4", "K5"));
  ok(file.SetCellStr("Records", "J4", "<joined> & 'kept'"));
  ok(file.SetPanes("Records", { Freeze: true, XSplit: 1, YSplit: 1, TopLeftCell: "B2", ActivePane: "bottomRight" }));
  ok(file.SetPageLayout("Records", { Orientation: "landscape", Size: 9, FitToHeight: 0, FitToWidth: 1 }));
  ok(file.SetPageMargins("Records", { Left: 0.5, Right: 0.5 } as never));
  ok(
    file.SetHeaderFooter("Records", {
      OddHeader: "&L&A&R&D",
      OddFooter: "&CPage &P of &N",
      DifferentFirst: true,
      FirstHeader: "&CFirst",
    }),
  );
  ok(file.InsertPageBreak("Answers", "A20"));
  ok(file.SetRowOutlineLevel("Answers", 30, 1));
  ok(file.SetColOutlineLevel("Answers", "Z", 2));
  ok(file.SetColVisible("Answers", "Y", false));
  ok(file.SetRowHeight("Answers", 40, 30));
  ok(file.ProtectSheet("Hidden", { AlgorithmName: "SHA-512", Password: "invented", SelectLockedCells: true }));
  ok(file.SetSheetVisible("Hidden", false));
  ok(file.AutoFilter("Hidden", "A1:B3", [{ Column: "A", Expression: "x > 1" }]));
  ok(file.AddIgnoredErrors("Answers", "A1:A9", 2 as never));
  ok(file.AddSparkline("Answers", { Location: ["M1"], Range: ["Records!E2:F2"], Markers: true }));

  const series = [{ Name: "Records!$E$1", Categories: "Records!$D$2:$D$5", Values: "Records!$E$2:$E$5" }];
  const title = { Paragraph: [{ Text: "Lame" }] };
  const { ChartType } = kinds as unknown as { ChartType?: Record<string, number> };
  const chart = (name: string, otherwise: number): number => ChartType?.[name] ?? otherwise;
  ok(file.AddChart("Pictures", "A1", { Type: chart("Col", 14), Series: series, Title: title } as never));
  ok(file.AddChart("Pictures", "J1", { Type: chart("Line", 38), Series: series, Title: title } as never));
  ok(file.AddChart("Pictures", "A20", { Type: chart("Pie", 43), Series: series, Title: title } as never));
  ok(
    file.AddPictureFromBytes("Pictures", "J20", {
      Extension: ".png",
      File: picture,
      Format: { AltText: "a square" },
      InsertType: 0,
    } as never),
  );
  ok(file.AddShape("Pictures", { Cell: "J30", Type: "rect", Paragraph: [{ Text: "a box" }], Width: 90, Height: 40 }));
  ok(
    file.AddFormControl("Pictures", {
      Cell: "A40",
      Type: 4 as never,
      Text: "seen",
      Checked: true,
      CellLink: "Pictures!$A$45",
    }),
  );
  ok(file.AddChartSheet("Chart", { Type: chart("Col", 14), Series: series } as never));
  ok(
    file.AddPivotTable({
      DataRange: "Records!A1:F5",
      PivotTableRange: "Pivot!A3:D12",
      Rows: [{ Data: "Lesion", DefaultSubtotal: true }],
      Data: [{ Data: "Lame", Name: "Lame in all", Subtotal: "Sum" }],
      RowGrandTotals: true,
      ColGrandTotals: true,
    }),
  );
  ok(file.SetDocProps({ Title: "Invented records", Creator: "Nobody", Created: "2026-01-02T03:04:05Z" }));
  ok(file.SetCustomProps({ Name: "invented", Value: "yes" } as never));
  return new Uint8Array(ok(file.WriteToBuffer()).buffer as unknown as ArrayBuffer);
}
