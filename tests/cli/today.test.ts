import { execFile } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { bundleCommand } from "../../src/build/release/bundleCommand.ts";
import type { Cell } from "../../src/cells/cell.ts";
import { type Day, dayOf, days1904 } from "../../src/cells/day.ts";
import { wallClock } from "../../src/hosts/sheets/wallClock.ts";
import { zones } from "../functions/zones.ts";
import { sheetCells } from "../samples/sheetCells.ts";
import { buildWorkbook, rowsOf } from "../workbook/buildWorkbook.ts";

const hours = [0, 8, 12, 21, 23];
const today = dayOf("2026-03-14");
const clock = fileURLToPath(new URL("clockAt.mjs", import.meta.url));

/** Two invented ewes: one is clear from today on, the other from tomorrow on, so that the list tells the day. */
const flock = (offset: Day): Uint8Array =>
  buildWorkbook({
    date1904: offset !== 0,
    sheets: [
      {
        name: "Flock",
        rows: rowsOf({
          A1: "ZZ 0123456 00001",
          B1: today - 11 - offset,
          C1: 10,
          A2: "ZZ 0123456 00002",
          B2: today - 10 - offset,
          C2: 10,
          E1: "=TODAY()",
          E2: "=NOW()",
          E3: "=HOUR(NOW())",
          E4: "=INT(NOW())=TODAY()",
          D1: "2026/03/01",
          // A text counts from 1900 in any workbook, which is another matter.
          ...(offset === 0 ? { F1: "=DAY(D1)", F2: "=MONTH(D1)", F3: "=YEAR(D1)" } : {}),
          G1: "=_xldudf_FOOT_NOTCLEAR(TODAY(),A1:A2,B1:B2,C1:C2)",
          G5: "=_xldudf_FOOT_SALECHECK(A1:A2,TODAY(),A1:A2,B1:B2,C1:C2)",
        }),
      },
    ],
  });

// The packages that stay outside the command are found from within this folder only.
let folder: string;
let command: string;
beforeAll(async () => {
  mkdirSync("dist", { recursive: true });
  folder = mkdtempSync(join(process.cwd(), "dist", "today-"));
  command = join(folder, "soundfold.js");
  writeFileSync(join(folder, "package.json"), '{ "type": "module" }');
  for (const [name, { text }] of Object.entries(await bundleCommand())) writeFileSync(join(folder, name), text);
  writeFileSync(join(folder, "1900.xlsx"), flock(0));
  writeFileSync(join(folder, "1904.xlsx"), flock(days1904));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Works a workbook out as if it were so many hours past midnight in a time zone. */
async function workedOutAt(system: "1900" | "1904", zone: string, hour: number): Promise<ReadonlyMap<string, Cell>> {
  const moment = wallClock(zone).dateOf(today + (hour + 0.5) / 24);
  const output = join(folder, `${zone.replaceAll("/", "-")}-${hour}-${system}.xlsx`);
  const env = { ...process.env, TZ: zone, SOUNDFOLD_TEST_MOMENT: moment.toISOString() };
  const given = ["--import", clock, command, "recalc", join(folder, `${system}.xlsx`), output];
  await promisify(execFile)(process.execPath, given, { env });
  return sheetCells(readFileSync(output));
}

describe.each(zones)("today in %s, in the built command,", (zone) => {
  it.each(hours)("is the day on the wall at half past %i", async (hour) => {
    // Days are counted alike at any hour: both ends of the day are enough for the other date system.
    for (const system of hour === 0 || hour === 23 ? (["1900", "1904"] as const) : (["1900"] as const)) {
      const cells = await workedOutAt(system, zone, hour);
      const at = (address: string): Cell | undefined => cells.get(`Flock!${address}`);
      const day = today - (system === "1904" ? days1904 : 0);
      expect([at("E1"), at("E3"), at("E4")]).toEqual([day, hour, true]);
      expect(at("E2")).toBeGreaterThanOrEqual(day + (hour + 0.5) / 24);
      expect(at("E2")).toBeLessThan(day + (hour + 0.99) / 24);
      expect([at("G2"), at("H2"), at("G3")]).toEqual(["ZZ 0123456 00002", day + 1, undefined]);
      if (system === "1900") expect([at("F1"), at("F2"), at("F3")]).toEqual([1, 3, 2026]);
      expect([at("H6"), at("H7")]).toEqual(["clear", "hold"]);
    }
  });
});
