import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { sheetCells } from "../samples/sheetCells.ts";
import { type Ended, runSoundfold } from "./runSoundfold.ts";

describe("template farm", () => {
  const folder = mkdtempSync(join(tmpdir(), "soundfold-template-"));
  let ended: Ended;
  beforeAll(async () => {
    ended = await runSoundfold(["template", "farm", "--farm", "Test farm", "--groups", "Ewes, Lambs"], folder);
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  test("writes a book with the farm's name and groups in it, and says where", () => {
    expect(ended).toEqual({ code: 0, output: "Flock foot book for Test farm: flock-foot-book.xlsx\n", errors: "" });
    const cells = sheetCells(readFileSync(join(folder, "flock-foot-book.xlsx")));
    expect(cells.get("Start!A2")).toBe("Test farm");
    expect([cells.get("Settings!A20"), cells.get("Settings!A21")]).toEqual(["Ewes", "Lambs"]);
    expect(cells.get("Today!A8")).toBe("no treatments recorded");
  });

  test.each([
    [["template", "farm"], "flock-foot-book.xlsx is already there and is never replaced; name another with --out."],
    [["template"], "template needs to know which: soundfold template "],
    [["template", "barn"], 'There is no template "barn"; the choice is soundfold template farm|visit|comparison'],
    [["template", "farm", "--out", "book.xls"], "book.xls must end in .xlsx, or spreadsheets will not open it."],
    [["template", "farm", "--out", "none/book.xlsx"], "There is no folder none to write to."],
    [
      ["template", "farm", "--out", "b.xlsx", "--farm", " "],
      "--farm is blank; give the name of the farm, or leave it out.",
    ],
    [
      ["template", "farm", "--out", "b.xlsx", "--groups", "a,,b"],
      '--groups "a,,b" has a blank name; write them as a,b,c.',
    ],
    [
      ["template", "farm", "--out", "b.xlsx", "--groups", "Ewes,ewes"],
      '--groups names "ewes" twice; every group needs a name of its own.',
    ],
    [
      ["template", "farm", "--out", "b.xlsx", "--groups", "a,b,c,d,e,f,g,h,i,j,k,l,m"],
      "--groups names 13 groups; there is room for 12.",
    ],
    [
      ["template", "farm", "--out", "b.xlsx", "--groups", "ewes,All"],
      '--groups names "All", which is what the line of all groups is called; take another word.',
    ],
    [
      ["template", "farm", "--out", "b.xlsx", "--groups", "ewes,la\nmbs"],
      "--groups has a name with a line break, a tab or another sign that cannot be seen; type it anew.",
    ],
    [
      ["template", "farm", "--out", "b.xlsx", "--farm", "Hill farm ".repeat(7).trim()],
      '--farm has a name of 69 letters, "Hill farm Hill farm …"; at most 60 fit.',
    ],
    [
      ["template", "farm", "--out", "b.xlsx", "--groups"],
      "--groups needs a value after it (one that begins with - is given as --groups=-…); see soundfold template --help.",
    ],
  ])("refuses %j and writes nothing", async (given, message) => {
    const refused = await runSoundfold(given, folder);
    expect(refused.code).toBe(2);
    expect(refused.output).toBe("");
    expect(refused.errors).toContain(message);
    expect(readdirSync(folder)).toEqual(["flock-foot-book.xlsx"]);
  });
});
