import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { beforeAll, describe, expect, it } from "vitest";
import { buildWorkbook, recalculated, rowsOf } from "./buildWorkbook.ts";
import { changesBeyondAnswers } from "./changesBeyondAnswers.ts";
import { excelizeWorkbook } from "./writers/excelize.ts";
import { exceljsWorkbook } from "./writers/exceljs.ts";

type Made = Awaited<ReturnType<typeof recalculated>>;

/** Parts that no program knows, packed and stored. */
const withOddParts = (bytes: Uint8Array): Uint8Array =>
  zipSync({
    ...unzipSync(bytes),
    "xl/unknown/thing.bin": Uint8Array.from({ length: 999 }, (_, at) => (at * 37) % 256),
    "customXml/item1.xml": [strToU8("<any>thing</any>"), { level: 0 }],
  });

const writers = {
  excelize: async () => withOddParts(await excelizeWorkbook()),
  exceljs: async () => withOddParts(await exceljsWorkbook()),
  "exceljs in the 1904 date system": async () => withOddParts(await exceljsWorkbook(true)),
};

describe.each(Object.entries(writers))("a workbook of %s", (name, write) => {
  let before: Uint8Array;
  let made: Made;
  beforeAll(async () => {
    before = await write();
    made = await recalculated(before);
  });

  it("changes in its answers and in nothing else", () => {
    expect(changesBeyondAnswers(before, made.bytes)).toEqual([]);
  });

  it("is worked out to the last formula", () => {
    const { summary, at } = made;
    expect([summary.left, summary.errors, summary.circular]).toEqual([[], [], false]);
    const days = name.includes("1904") ? 1462 : 0;
    expect([2, 3, 4, 5].map((row) => at(`G${row}`))).toEqual([46_092, 46_080, 46_078, 46_120].map((day) => day - days));
    expect([2, 3, 4, 5].map((row) => at(`H${row}`))).toEqual([46_092, 46_080, 46_078, 46_120].map((day) => day - days));
    const answers = ["A1", "A2", "A3", "A4", "A5", "A6", "A7", "A8", "A9"].map((address) => at(address, 1));
    expect(answers).toEqual([12 / 106, "many", 12 / 106, 80 + 25 + 217, 2, "shelly hoof", 28, 2, 202_603]);
    expect(["C1", "C2", "C3", "C4", "C5"].map((address) => at(address, 1))).toEqual([
      "group",
      "footrot",
      "shelly hoof",
      "toe granuloma",
      "all",
    ]);
    expect([1, 2, 3, 4].map((row) => [at(`I${row}`, 1), at(`J${row}`, 1), at(`K${row}`, 1)])).toEqual([
      [8, 4 / 20, 24],
      [2, 1 / 25, 26],
      [0, 0, 30],
      [14, 7 / 31, 38],
    ]);
  });

  it("holds what it must bring through", () => {
    const parts = Object.keys(unzipSync(before)).join("\n");
    const kinds = ["comments", "drawings/drawing", "drawings/vmlDrawing", "media/image", "tables/table", "theme/theme"];
    for (const kind of kinds) expect(parts).toContain(`xl/${kind}`);
    if (name === "excelize") for (const kind of ["charts/", "chartsheets/", "pivot"]) expect(parts).toContain(kind);
    const sheet = strFromU8(unzipSync(made.bytes)["xl/worksheets/sheet1.xml"] as Uint8Array);
    for (const element of [
      "dataValidation ",
      "conditionalFormatting",
      "mergeCell ",
      "pane ",
      "hyperlink ",
      "headerFooter",
      "pageSetup",
    ])
      expect(sheet).toContain(`<${element}`);
    expect(made.summary.untouched.at(-1)).toBe("2 parts of a kind not known here");
  });
});

describe("what recalculating may not change", () => {
  const before = buildWorkbook({
    sheets: [
      { name: "One", rows: rowsOf({ A1: 1, B1: "=A1*2", C1: "text", A2: 3 }), after: '<pageMargins left="1"/>' },
    ],
    parts: { "xl/media/picture.bin": Uint8Array.of(1, 2, 3) },
  });
  const tampered = (part: string, change: (text: string) => string): Uint8Array => {
    const files = unzipSync(before);
    return zipSync({ ...files, [part]: strToU8(change(strFromU8(files[part] as Uint8Array))) });
  };
  const sheet = "xl/worksheets/sheet1.xml";

  it.each<[string, string, (text: string) => string, RegExp]>([
    ["a value that is no answer", sheet, (text) => text.replace("<v>3</v>", "<v>4</v>"), /A2 was changed/],
    ["a text", sheet, (text) => text.replace("text", "Text"), /C1 was changed/],
    ["a cell that is lost", sheet, (text) => text.replace(/<c r="A2".*?<\/c>/, ""), /A2 is gone/],
    ["a cell that is new", sheet, (text) => text.replace("</row>", '<c r="D1"><v>1</v></c></row>'), /D1 was added/],
    ["another formula", sheet, (text) => text.replace("A1*2", "A1*3"), /B1 has the formula A1\*3/],
    ["another format", sheet, (text) => text.replace('r="B1"', 'r="B1" s="2"'), /B1 has another format/],
    ["a row's height", sheet, (text) => text.replace('<row r="1"', '<row r="1" ht="30"'), /row 1 has other attributes/],
    ["a margin", sheet, (text) => text.replace('left="1"', 'left="2"'), /around the cells/],
    ["a style", "xl/styles.xml", (text) => text.replace("<font/>", "<font><b/></font>"), /more than number formats/],
    ["a picture", "xl/media/picture.bin", () => "x", /picture.bin was changed/],
    ["a part that is new", "xl/new.bin", () => "x", /xl\/new.bin was added/],
    [
      "a link",
      "xl/_rels/workbook.xml.rels",
      (text) => text.replace('Target="styles.xml"', 'Target="x.xml"'),
      /lost .*styles.xml/,
    ],
  ])("shows: %s", (_, part, change, message) => {
    if (part === "xl/new.bin") {
      const after = zipSync({ ...unzipSync(before), [part]: strToU8("x") });
      expect(changesBeyondAnswers(before, after).join()).toMatch(message);
    } else expect(changesBeyondAnswers(before, tampered(part, change)).join()).toMatch(message);
  });

  it("is nothing when nothing was changed", () => {
    expect(
      changesBeyondAnswers(
        before,
        tampered(sheet, (text) => text.replace("</f>", "</f><v>2</v>")),
      ),
    ).toEqual([]);
  });
});

it("a formula that others share keeps them whole when it comes to fill cells", async () => {
  const shared = (row: number, leads: string): string => `<c r="C${row}"><f t="shared" ${leads}si="0"`;
  const formula = "_xlfn._xlws.FILTER($A$1:$B$1,$A$1:$B$1&gt;=A1)";
  const rows = `<row r="1"><c r="A1"><v>4</v></c><c r="B1"><v>9</v></c>${shared(1, 'ref="C1:C3" ')}>${formula}</f></c></row><row r="2"><c r="A2"><v>5</v></c>${shared(2, "")}/><v>9</v></c></row><row r="3"><c r="A3"><v>9</v></c>${shared(3, "")}/></c></row>`;
  const { at, xml } = await recalculated(buildWorkbook({ sheets: [{ name: "One", rows }] }));
  expect(["C1", "D1", "C2", "C3"].map((address) => at(address))).toEqual([4, 9, 9, 9]);
  expect(xml()).toContain(`<c r="C2"><f>${formula.replace("=A1", "=A2")}</f><v>9</v></c>`);
  expect(xml()).not.toContain('t="shared"');
});
