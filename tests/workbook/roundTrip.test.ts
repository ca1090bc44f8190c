import { createRequire } from "node:module";
import { init } from "excelize-wasm";
import { strFromU8, unzipSync, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { recalculated } from "./buildWorkbook.ts";

const require = createRequire(import.meta.url);

const done = <T extends { error: string | null }>(answer: T): T => {
  expect(answer.error).toBeNull();
  return answer;
};

/** A workbook with charts, a table, validation, conditional formats, comments, as another library writes it. */
async function rich(): Promise<Uint8Array> {
  const { NewFile } = await init(require.resolve("excelize-wasm/excelize.wasm.gz"));
  const file = NewFile();
  const records: readonly (readonly [string, number, number])[] = [
    ["a", 4, 20],
    ["b", 1, 25],
    ["c", 0, 30],
  ];
  for (const [column, heading] of Object.entries({ A: "Group", B: "Lame", C: "Seen", D: "Share" })) {
    done(file.SetCellValue("Sheet1", `${column}1`, heading));
  }
  records.forEach(([group, lame, seen], at) => {
    done(file.SetCellValue("Sheet1", `A${at + 2}`, group));
    done(file.SetCellValue("Sheet1", `B${at + 2}`, lame));
    done(file.SetCellValue("Sheet1", `C${at + 2}`, seen));
    done(file.SetCellFormula("Sheet1", `D${at + 2}`, `FOOT.FLOCKPREV(B${at + 2},C${at + 2})`));
  });
  done(file.SetCellFormula("Sheet1", "F2", "FOOT.PREVBY(Gathers[Group],Gathers[Lame],Gathers[Seen])"));
  done(file.SetCellFormula("Sheet1", "F10", "SUM(Gathers[Lame])/SUM(Gathers[Seen])"));
  done(
    file.AddTable("Sheet1", { Range: "A1:D4", Name: "Gathers", StyleName: "TableStyleMedium2", ShowRowStripes: true }),
  );
  done(
    file.AddDataValidation("Sheet1", {
      Sqref: "A2:A4",
      Type: "list",
      Formula1: '"a,b,c"',
      ShowDropDown: false,
      ShowErrorMessage: true,
    }),
  );
  const { style } = done(file.NewConditionalStyle({ Font: { Bold: true } }));
  done(file.SetConditionalFormat("Sheet1", "D2:D4", [{ Type: "cell", Criteria: ">", Format: style, Value: "0.1" }]));
  done(
    file.AddComment("Sheet1", { Cell: "A1", Author: "Invented", Paragraph: [{ Text: "how the groups are called" }] }),
  );
  done(file.NewSheet("Picture"));
  done(
    file.AddChart("Picture", "A1", {
      Type: 38,
      Series: [{ Name: "Sheet1!$D$1", Categories: "Sheet1!$A$2:$A$4", Values: "Sheet1!$D$2:$D$4" }],
    } as never),
  );
  return done(file.WriteToBuffer()).buffer as unknown as Uint8Array;
}

describe("a workbook of another writer", () => {
  it("comes through with every part it does not change byte for byte", async () => {
    const written = unzipSync(new Uint8Array(await rich()));
    const odd = new Uint8Array(Array.from({ length: 999 }, (_, at) => (at * 37) % 256));
    const before = zipSync({
      ...written,
      "xl/unknown/thing.bin": odd,
      "customXml/item1.xml": [new TextEncoder().encode("<any>thing</any>"), { level: 0 }],
    });
    const { bytes, summary, at } = await recalculated(before);
    const [old, now] = [unzipSync(before), unzipSync(bytes)];
    const sheet = "xl/worksheets/sheet1.xml";
    expect(Object.keys(old)).toEqual(
      expect.arrayContaining([
        "xl/charts/chart1.xml",
        "xl/tables/table1.xml",
        "xl/comments1.xml",
        "xl/drawings/drawing1.xml",
      ]),
    );
    const mayChange = new Set([sheet, "xl/styles.xml", "[Content_Types].xml", "xl/_rels/workbook.xml.rels"]);
    for (const part of Object.keys(old)) {
      if (!mayChange.has(part))
        expect([part, Buffer.compare(Buffer.from(old[part] as Uint8Array), Buffer.from(now[part] ?? []))]).toEqual([
          part,
          0,
        ]);
    }
    expect(Object.keys(now).filter((part) => !(part in old))).toEqual(["xl/metadata.xml"]);
    expect(summary.untouched).toEqual(["comments", "charts", "2 parts of a kind not known here"]);
    expect([at("D2"), at("F2"), at("F3"), at("F6")]).toEqual([0.2, "group", "a", "all"]);
    expect(at("F10")).toBeCloseTo(5 / 75, 12);
    expect(summary.errors).toEqual([]);
    // The changed sheet still holds what stands around its cells, to the letter.
    const around = (bytesOf: Uint8Array): string => {
      const text = strFromU8(bytesOf);
      return text.slice(0, text.indexOf("<sheetData>")) + text.slice(text.indexOf("</sheetData>"));
    };
    expect(around(now[sheet] as Uint8Array)).toBe(around(old[sheet] as Uint8Array));
    expect(around(now[sheet] as Uint8Array)).toContain("<dataValidation");
    expect(around(now[sheet] as Uint8Array)).toContain("<conditionalFormatting");
  });
});
