import { execFile } from "node:child_process";
import { copyFileSync, existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { isCellError } from "../../src/cells/cell.ts";
import { engineInNode } from "../../src/hosts/headless/engineInNode.ts";
import { placeText } from "../../src/workbook/address.ts";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import { type Recalculated, recalculate } from "../../src/workbook/recalculate.ts";
import { sheetCells } from "../samples/sheetCells.ts";
import { startCalc } from "./startCalc.ts";

const programs = [
  ["7.4", process.env.SOUNDFOLD_CALC ?? "/usr/bin/soffice"],
  ["25.2", join(process.env.SOUNDFOLD_CALC_NEWER ?? "/opt/soundfold-calc-newer", "soffice")],
] as const;

const sample = "samples/farm-records.xlsx";

// Without the extension: Calc then knows none of the functions, and writes their names in its own way.
describe.each(programs)("the farm records, saved again by LibreOffice %s", (_, program) => {
  let folder: string;
  let saved: Buffer;
  let worked: Recalculated;

  beforeAll(async () => {
    if (!existsSync(program)) throw new Error(`${program} is not there; run tests/spreadsheets/installCalc.sh as root`);
    folder = mkdtempSync(join(tmpdir(), "soundfold-records-"));
    const profile = `-env:UserInstallation=file://${folder}/profile`;
    await promisify(execFile)(program, [profile, "--headless", "--convert-to", "xlsx", "--outdir", folder, sample]);
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
      if (typeof value === "number" && typeof again === "number") expect(again, address).toBeCloseTo(value, 10);
      else expect(again, address).toEqual(value);
    }
  });

  it("ends in an error in the same two cells", () => {
    expect(worked.summary.errors.map(({ sheet }) => sheet)).toEqual(["Cases", "Cases"]);
    expect(worked.summary.left).toEqual([]);
  });
});

describe("the farm records, opened by LibreOffice 25.2 with the extension", () => {
  it("gives every answer, cell for cell", async () => {
    const calc = await startCalc("25.2");
    try {
      const path = join(calc.folder, "farm-records.xlsx");
      copyFileSync(sample, path);
      const { sheets } = await calc.read(path);
      const stored = sheetCells(readFileSync(sample));
      let compared = 0;
      for (const [name, rows] of Object.entries(sheets)) {
        rows.forEach((cells, row) => {
          cells.forEach((cell, column) => {
            const address = `${name}!${placeText({ row, column })}`;
            const value = stored.get(address) ?? "";
            if (typeof cell === "number" && typeof value === "number") expect(cell, address).toBeCloseTo(value, 10);
            else expect(cell, address).toEqual(value);
            if (value !== "") compared++;
          });
        });
      }
      expect(compared).toBe(stored.size);
    } finally {
      await calc.stop();
    }
  });
});
