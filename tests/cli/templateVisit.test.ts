import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import { sheetCells } from "../samples/sheetCells.ts";
import { runSoundfold } from "./runSoundfold.ts";

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "soundfold-templates-"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test("template visit makes a Visit sheet with the farm and its groups, and never replaces it", async () => {
  const out = join(folder, "visit.xlsx");
  const asked = ["template", "visit", "--farm", "Far field", "--groups", "Ewes, Lambs", "--out", out];
  expect(await runSoundfold(asked)).toMatchObject({
    code: 0,
    errors: "",
    output: `Visit sheet for Far field: ${out}\n`,
  });
  const cells = sheetCells(readFileSync(out));
  expect(cells.get("Visit!B4")).toBe("Far field");
  expect(["A17", "A18", "A19"].map((cell) => cells.get(`Visit!${cell}`))).toEqual(["Ewes", "Lambs", undefined]);
  expect((await runSoundfold(asked)).errors).toContain("is already there and is never replaced");
});

test("template visit --for libreoffice gives each list its room, and recalc keeps the names that Calc knows", async () => {
  const out = join(folder, "calc.xlsx");
  expect(await runSoundfold(["template", "visit", "--for", "libreoffice", "--out", out])).toMatchObject({ code: 0 });
  const worked = join(folder, "calc-worked-out.xlsx");
  expect(await runSoundfold(["recalc", out])).toMatchObject({ code: 0 });
  for (const file of [out, worked]) {
    const formulas = openWorkbook(readFileSync(file)).sheets.flatMap(({ rows }) =>
      rows.flatMap(({ cells }) => cells.flatMap(({ formula }) => (formula ? [formula.text] : []))),
    );
    expect(formulas.some((text) => text.includes("SOUNDFOLD.FOOT.CAREPLAN("))).toBe(true);
    expect(formulas.filter((text) => /_xldudf/i.test(text))).toEqual([]);
  }
  expect(sheetCells(readFileSync(worked))).toEqual(sheetCells(readFileSync(out)));
});

test("template says which editions there are", async () => {
  expect((await runSoundfold(["template", "visit", "--for", "paper"])).errors).toBe(
    '--for is "paper"; the choice is --for excel and --for libreoffice.\n',
  );
});

test("template comparison is about many flocks and refuses the name of one", async () => {
  const { code, errors } = await runSoundfold(["template", "comparison", "--farm", "Far field"]);
  expect({ code, errors }).toEqual({
    code: 2,
    errors: "template comparison is about many flocks and takes neither --farm nor --groups.\n",
  });
});
