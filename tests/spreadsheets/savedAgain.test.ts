import { execFile } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { isCellError } from "../../src/cells/cell.ts";
import { engineInNode } from "../../src/hosts/headless/engineInNode.ts";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import { type Recalculated, recalculate } from "../../src/workbook/recalculate.ts";
import { sheetCells } from "../samples/sheetCells.ts";
import { type CalcVersion, calcProgram } from "./calcProgram.ts";

const versions: readonly CalcVersion[] = ["7.4", "25.2"];

const sample = "samples/farm-records.xlsx";

// Without the extension: Calc then knows none of the functions, and writes their names in its own way.
describe.each(versions)("the farm records, saved again by LibreOffice %s", (version) => {
  let folder: string;
  let saved: Buffer;
  let worked: Recalculated;

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), "soundfold-records-"));
    const profile = `-env:UserInstallation=file://${folder}/profile`;
    await promisify(execFile)(calcProgram(version), [
      profile,
      "--headless",
      "--convert-to",
      "xlsx",
      "--outdir",
      folder,
      sample,
    ]);
    saved = readFileSync(join(folder, "farm-records.xlsx"));
    worked = await recalculate(openWorkbook(saved), engineInNode());
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it("held no answer any more", () => {
    const answer = sheetCells(saved).get("Answers!B4");
    expect(isCellError(answer) ? answer.error : answer).toBe("#NAME?");
  });

  it("gives every answer again, cell for cell", () => {
    const before = sheetCells(readFileSync(sample));
    const after = sheetCells(worked.bytes);
    expect([...after.keys()].sort()).toEqual([...before.keys()].sort());
    for (const [address, value] of before) {
      const again = after.get(address);
      // Calc writes fifteen digits of a number into a file, where there may be seventeen.
      if (typeof value === "number" && typeof again === "number") expect(again, address).toBeCloseTo(value, 10);
      else expect(again, address).toEqual(value);
    }
  });

  it("ends in an error in the same two cells", () => {
    expect(worked.summary.errors.map(({ sheet }) => sheet)).toEqual(["Cases", "Cases"]);
    expect(worked.summary.left).toEqual([]);
  });
});
