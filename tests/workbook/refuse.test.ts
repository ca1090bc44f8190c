import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { usualLimits } from "../../src/workbook/limits.ts";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import { WorkbookProblem } from "../../src/workbook/workbookProblem.ts";
import { buildWorkbook, rowsOf, zipParts } from "./buildWorkbook.ts";

const good = () => buildWorkbook({ sheets: [{ name: "One", rows: rowsOf({ A1: 1 }) }] });
const sheetText = (inside: string): Uint8Array =>
  buildWorkbook({ sheets: [{ name: "One", rows: "" }], parts: { "xl/worksheets/sheet1.xml": inside } });
const compound = (content: string): Uint8Array =>
  new Uint8Array([
    0xd0,
    0xcf,
    0x11,
    0xe0,
    0xa1,
    0xb1,
    0x1a,
    0xe1,
    ...new Array(504).fill(0),
    ...[...content].flatMap((letter) => [letter.charCodeAt(0), 0]),
  ]);

const refused: readonly (readonly [string, () => Uint8Array, RegExp])[] = [
  ["nothing", () => new Uint8Array(), /empty/],
  ["a text file", () => strToU8("tag,date\n"), /This is a text file/],
  ["a password-protected workbook", () => compound("EncryptedPackage"), /password/],
  ["an old workbook", () => compound("Workbook"), /old workbook \(\.xls\)/],
  ["a zip of something else", () => zipSync({ "a.txt": strToU8("x") }), /zip, but not an \.xlsx/],
  ["a cut zip", () => good().slice(0, 700), /damaged or cut short/],
  ["a zip cut inside a part", () => good().slice(0, -30), /damaged or cut short/],
  [
    "a missing sheet part",
    () => buildWorkbook({ sheets: [{ name: "Gathers", rows: "" }], without: ["xl/worksheets/sheet1.xml"] }),
    /its sheet Gathers is missing/,
  ],
  [
    "a missing list of sheets",
    () => buildWorkbook({ sheets: [{ name: "One", rows: "" }], without: ["xl/workbook.xml"] }),
    /xl\/workbook\.xml is missing/,
  ],
  [
    "no relationships",
    () => buildWorkbook({ sheets: [{ name: "One", rows: "" }], without: ["xl/_rels/workbook.xml.rels"] }),
    /sheet One has no part/,
  ],
  [
    "a binary workbook",
    () =>
      zipParts({
        "_rels/.rels":
          '<Relationships><Relationship Id="a" Type="x/officeDocument" Target="xl/workbook.bin"/></Relationships>',
        "xl/workbook.bin": "x",
      }),
    /\.xlsb/,
  ],
  ["broken XML", () => sheetText("<worksheet><sheetData><row>"), /sheet1\.xml cannot be read/],
  ["a sheet without cells", () => sheetText("<worksheet/>"), /holds no cells/],
  [
    "a cell twice",
    () => buildWorkbook({ sheets: [{ name: "One", rows: '<row r="1"><c r="A1"/><c r="A1"/></row>' }] }),
    /holds cell A1 twice/,
  ],
  [
    "a row twice",
    () => buildWorkbook({ sheets: [{ name: "One", rows: '<row r="1"/><row r="1"/>' }] }),
    /holds row 1 twice/,
  ],
  [
    "a cell beyond the sheet",
    () => buildWorkbook({ sheets: [{ name: "One", rows: '<row r="1"><c r="XFE1"/></row>' }] }),
    /lies outside a sheet/,
  ],
  [
    "a row beyond the sheet",
    () => buildWorkbook({ sheets: [{ name: "One", rows: '<row r="1048577"/>' }] }),
    /lies outside a sheet/,
  ],
  ...["A1e0", "!!1", "1A", "A", "A0", "$A$1", "AAAA1", "A 1", "A1.0", "\u00c41"].map(
    (address): (typeof refused)[number] => [
      `a cell at ${address}`,
      () => buildWorkbook({ sheets: [{ name: "One", rows: `<row r="1"><c r="${address}"><v>1</v></c></row>` }] }),
      /cell .* lies outside a sheet/,
    ],
  ),
  ...["1e0", "0x1", " 1", "-1", "0", "1.0", ""].map((row): (typeof refused)[number] => [
    `a row "${row}"`,
    () => buildWorkbook({ sheets: [{ name: "One", rows: `<row r="${row}"/>` }] }),
    /row .* lies outside a sheet/,
  ]),
  [
    "two parts whose names differ in capitals only",
    () => buildWorkbook({ sheets: [{ name: "One", rows: "" }], parts: { "xl/worksheets/SHEET1.xml": "<worksheet/>" } }),
    /holds the part xl\/worksheets\/SHEET1\.xml twice/,
  ],
  [
    "a number that is none",
    () => buildWorkbook({ sheets: [{ name: "One", rows: '<row r="1"><c r="A1"><v>12,5</v></c></row>' }] }),
    /A1 .* should hold a number but holds 12,5/,
  ],
  [
    "a shared text that is not there",
    () => buildWorkbook({ sheets: [{ name: "One", rows: '<row r="1"><c r="A1" t="s"><v>4</v></c></row>' }] }),
    /refers to a text that is not there/,
  ],
  [
    "growing entities",
    () =>
      sheetText(
        '<!DOCTYPE x [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]><worksheet><sheetData><row r="1"><c r="A1" t="str"><v>&b;</v></c></row></sheetData></worksheet>',
      ),
    /document type/,
  ],
  [
    "entities from elsewhere",
    () => sheetText('<!DOCTYPE x [<!ENTITY a SYSTEM "file:///etc/passwd">]><worksheet><sheetData/></worksheet>'),
    /document type/,
  ],
  [
    "text in UTF-16",
    () =>
      sheetText("\ufeff").length
        ? buildWorkbook({
            sheets: [{ name: "One", rows: "" }],
            parts: { "xl/worksheets/sheet1.xml": new Uint8Array([0xff, 0xfe, 60, 0]) },
          })
        : good(),
    /UTF-16LE/,
  ],
  [
    "bytes that are no text",
    () =>
      buildWorkbook({
        sheets: [{ name: "One", rows: "" }],
        parts: { "xl/worksheets/sheet1.xml": new Uint8Array([60, 0xc3, 0x28]) },
      }),
    /not text in UTF-8/,
  ],
];

describe("files that cannot be worked on", () => {
  it.each<[string, () => Uint8Array, RegExp]>([
    [
      "a number",
      () =>
        buildWorkbook({
          sheets: [{ name: "One", rows: `<row r="1"><c r="A1"><v>${"1x".repeat(20_000)}</v></c></row>` }],
        }),
      /^The workbook is damaged: cell A1 .* should hold a number but holds 1x1x/,
    ],
    [
      "a sheet's name",
      () => buildWorkbook({ sheets: [{ name: "S".repeat(40_000), rows: "" }], without: ["xl/worksheets/sheet1.xml"] }),
      /is missing\.$/,
    ],
    [
      "a part's name",
      () => zipParts({ [`xl/${"p".repeat(40_000)}`]: "", [`XL/${"p".repeat(40_000)}`]: "" }),
      /twice\.$/,
    ],
  ])("are refused in a sentence that can be read, however long %s is", (_, make, sentence) => {
    let message = "";
    try {
      openWorkbook(make());
    } catch (error) {
      message = (error as Error).message;
    }
    expect(message).toMatch(sentence);
    expect(message.length).toBeLessThan(400);
  });

  it.each(refused)("refuses %s in one sentence", (_, make, sentence) => {
    const open = () => openWorkbook(make());
    expect(open).toThrow(WorkbookProblem);
    expect(open).toThrow(sentence);
  });

  it("refuses a zip bomb before it is unpacked", () => {
    const zeros = new Uint8Array(40_000_000);
    const bomb = zipParts({ "_rels/.rels": "x", "xl/worksheets/sheet1.xml": zeros });
    expect(bomb.length).toBeLessThan(100_000);
    expect(() => openWorkbook(bomb)).toThrow(/times its packed size/);
    const small = { ...usualLimits, bytes: 1000 };
    expect(() => openWorkbook(good(), small)).toThrow(/unpacks to more than/);
    expect(() => openWorkbook(good(), { ...usualLimits, parts: 3 })).toThrow(/more than 3 parts/);
  });

  it("is not fooled by a size that is given too small", () => {
    const bytes = good();
    // The sizes in the zip's directory say 10 bytes for every part.
    const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    for (let at = 0; at + 46 < bytes.length; at += 1)
      if (view.getUint32(at, true) === 0x02014b50) view.setUint32(at + 24, 10, true);
    expect(() => openWorkbook(bytes)).toThrow(WorkbookProblem);
  });

  it("opens names that climb out of the folder, without harm", () => {
    const climbing = buildWorkbook({
      sheets: [{ name: "One", rows: rowsOf({ A1: 1 }) }],
      parts: { "../../../tmp/x": "x", "/etc/x": "y" },
    });
    expect(openWorkbook(climbing).sheets).toHaveLength(1);
  });
});

describe("files of other kinds", () => {
  it.each([
    ["a text file", strToU8("tag;date;lesion\r\n1;2026-03-14;scald\r\n"), /\.csv.*save it as \.xlsx/],
    [
      "an OpenDocument spreadsheet",
      zipSync({ mimetype: [strToU8("application/vnd.oasis.opendocument.spreadsheet"), { level: 0 }] }),
      /\.ods.*save it as \.xlsx/,
    ],
  ])("%s is answered with the way out", (_, bytes, sentence) => {
    expect(() => openWorkbook(bytes)).toThrow(sentence);
  });

  it("a macro sheet without a part of its own is no damage", () => {
    const bytes = buildWorkbook({ sheets: [{ name: "One", rows: rowsOf({ A1: 4 }) }] });
    const parts = unzipSync(bytes);
    const listed = strFromU8(parts["xl/workbook.xml"] as Uint8Array);
    parts["xl/workbook.xml"] = strToU8(
      listed.replace("</sheets>", '<sheet name="Macro1" sheetId="9" r:id=""/></sheets>'),
    );
    expect(openWorkbook(zipSync(parts)).sheets.map(({ name }) => name)).toEqual(["One", "Macro1"]);
  });
});
