import {
  existsSync,
  linkSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { unzipSync, zipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import { cellValue } from "../../src/workbook/workbook.ts";
import { buildWorkbook, rowsOf, zipParts } from "../workbook/buildWorkbook.ts";
import { runSoundfold } from "./runSoundfold.ts";

let folder: string;
const inFolder = (name: string) => join(folder, name);
const write = (name: string, content: string | Uint8Array) => writeFileSync(inFolder(name), content);
const recalc = (...given: string[]) => runSoundfold(["recalc", ...given], folder);

const farm = buildWorkbook({
  sheets: [
    {
      name: "Gathers",
      rows: rowsOf({
        A1: 4,
        B1: 100,
        A2: 21,
        B2: 20,
        C1: "=_xldudf_FOOT_FLOCKPREV(A1,B1)",
        C2: "=_xldudf_FOOT_FLOCKPREV(A2,B2)",
        D1: "=SUM(A1:A2)",
      }),
    },
  ],
  parts: { "xl/vbaProject.bin": new Uint8Array([1, 2, 3]) },
});

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "soundfold-cli-"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe("recalc", () => {
  test("works out a workbook, saves it beside the input and says what it did", async () => {
    write("farm.xlsx", farm);
    const { code, output, errors } = await recalc("farm.xlsx");
    expect({ code, errors }).toEqual({ code: 0, errors: "" });
    expect(output).toContain("3 formulas worked out; with FOOT.FLOCKPREV 2.");
    expect(output).toContain("1 cell ends in an error:");
    expect(output).toMatch(/Gathers!C2 {2}#VALUE! {2}lame: 21 is more than the 20 seen/);
    expect(output).toContain("Kept untouched: macros.");
    expect(output).toContain("Saved as farm-worked-out.xlsx");
    expect(readFileSync(inFolder("farm.xlsx")).equals(farm)).toBe(true);
    const [sheet] = openWorkbook(readFileSync(inFolder("farm-worked-out.xlsx"))).sheets;
    if (!sheet) throw new Error("the saved workbook has no sheet");
    expect([cellValue(sheet, 0, 2), cellValue(sheet, 0, 3)]).toEqual([0.04, 25]);
    expect(readdirSync(folder).filter((name) => name.endsWith(".part"))).toEqual([]);
  });

  test("replaces a file that is there only with --force", async () => {
    write("farm.xlsx", farm);
    write("there.xlsx", "kept");
    const refused = await recalc("farm.xlsx", "there.xlsx");
    expect(refused).toEqual({
      code: 2,
      output: "",
      errors: "there.xlsx is already there; add --force to replace it, or name another output.\n",
    });
    expect(readFileSync(inFolder("there.xlsx"), "utf8")).toBe("kept");
    expect((await recalc("farm.xlsx", "there.xlsx", "--force")).code).toBe(0);
    expect(openWorkbook(readFileSync(inFolder("there.xlsx"))).sheets).toHaveLength(1);
  });

  test("never overwrites its input, by whatever name, even with --force", async () => {
    write("farm.xlsx", farm);
    linkSync(inFolder("farm.xlsx"), inFolder("same.xlsx"));
    for (const output of ["farm.xlsx", "./farm.xlsx", inFolder("farm.xlsx"), "same.xlsx"]) {
      const { code, errors } = await recalc("farm.xlsx", output, "--force");
      expect({ code, errors }).toEqual({
        code: 2,
        errors: `${output} is the input itself, which is never overwritten; name another output.\n`,
      });
    }
    expect(readFileSync(inFolder("farm.xlsx")).equals(farm)).toBe(true);
  });
});

describe("recalc of what it cannot work with gives one sentence, exit code 2 and no file", () => {
  const compound = [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1];
  const encryptedName = [..."EncryptedPackage"].flatMap((letter) => [letter.charCodeAt(0), 0]);
  const bomb = zipParts({ "xl/workbook.xml": new Uint8Array(60_000_000) });
  const otherFigure = Buffer.from(
    Buffer.from(zipSync(unzipSync(farm), { level: 0 }))
      .toString("latin1")
      .replace("<v>4</v>", "<v>0</v>"),
    "latin1",
  );
  const noSheet = buildWorkbook({ sheets: [{ name: "Cases", rows: "" }], without: ["xl/worksheets/sheet1.xml"] });

  test.each<readonly [string, Uint8Array | string | undefined, RegExp]>([
    ["a file that is not there", undefined, /^bad\.xlsx cannot be read: there is no such file\.$/],
    ["a text file", "Date,Lame\n", /^bad\.xlsx cannot be worked out\. This is a text file/],
    ["an empty file", "", /is empty/],
    ["an old .xls", new Uint8Array(compound), /old workbook \(\.xls\)/],
    ["a file with a password", new Uint8Array([...compound, ...encryptedName]), /password/],
    ["a zip of something else", zipParts({ "notes.txt": "hello" }), /not an \.xlsx workbook/],
    ["a zip cut off in the middle", farm.slice(0, farm.length / 2), /damaged|cut|not complete|incomplete/],
    ["a part that is not what was saved", otherFigure, /part xl\/worksheets\/sheet1\.xml does not match its checksum/],
    ["a zip bomb", bomb, /times its packed size|too (big|large)|unpack/],
    ["a workbook whose sheet is missing", noSheet, /sheet Cases is missing/],
  ])("%s", async (_, content, sentence) => {
    rmSync(inFolder("bad.xlsx"), { force: true });
    if (content !== undefined) write("bad.xlsx", content);
    const { code, output, errors } = await recalc("bad.xlsx", "out.xlsx");
    expect({ code, output }).toEqual({ code: 2, output: "" });
    expect(errors.trimEnd()).toMatch(sentence);
    expect(errors.trimEnd()).not.toContain("\n");
    expect(existsSync(inFolder("out.xlsx"))).toBe(false);
    expect(readdirSync(folder).filter((name) => name.endsWith(".part"))).toEqual([]);
  });

  test.each<readonly [string, readonly string[], RegExp]>([
    ["no input", [], /needs the workbook/],
    ["a word too many", ["farm.xlsx", "out.xlsx", "more.xlsx"], /"more\.xlsx" is one word too many/],
    ["a blank input", [""], /needs the workbook/],
    ["an unknown option", ["farm.xlsx", "--quickly"], /recalc does not know --quickly; see soundfold recalc --help/],
    ["a value for a switch", ["farm.xlsx", "--force=yes"], /--force stands alone, without = and a value/],
    ["a folder that is not there", ["farm.xlsx", "nowhere/out.xlsx"], /no folder nowhere/],
    ["a folder as the output", ["farm.xlsx", "folder.xlsx"], /folder\.xlsx is a folder/],
    ["an output of another kind", ["farm.xlsx", "out.csv"], /must end in \.xlsx/],
    ["a folder as the input", ["folder.xlsx", "out.xlsx"], /folder\.xlsx cannot be read: it is a folder/],
  ])("%s", async (_, given, sentence) => {
    write("farm.xlsx", farm);
    mkdirSync(inFolder("folder.xlsx"), { recursive: true });
    const { code, errors } = await recalc(...given);
    expect(code).toBe(2);
    expect(errors.trimEnd()).toMatch(sentence);
    expect(errors.trimEnd()).not.toContain("\n");
    expect(existsSync(inFolder("out.xlsx"))).toBe(false);
  });
});
