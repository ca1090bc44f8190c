import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
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

test("template comparison is about many flocks and refuses the name of one", async () => {
  const { code, errors } = await runSoundfold(["template", "comparison", "--farm", "Far field"]);
  expect({ code, errors }).toEqual({
    code: 2,
    errors: "template comparison is about many flocks and takes neither --farm nor --groups.\n",
  });
});
