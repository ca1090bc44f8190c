import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { dayOf } from "../../../src/cells/day.ts";
import { openWorkbook } from "../../../src/workbook/openWorkbook.ts";
import { cellValue } from "../../../src/workbook/workbook.ts";
import { withOwnBook } from "../../../src/workbooks/ownBook/withOwnBook.ts";
import { cases as casesTable } from "../../../src/workbooks/tables/cases.ts";
import type { KeyOf } from "../../../src/workbooks/tables/defineTable.ts";
import { columnOf } from "../../workbooks/columnOf.ts";
import { type Driven, inChromium, inFirefox, until } from "./drivenPages.ts";

const minutes = 60_000;

const folder = mkdtempSync(join(tmpdir(), "soundfold-one-file-"));
const page = join(folder, "hill-farm.html");
beforeAll(() => {
  const book = readFileSync(join("samples", "flock-foot-book-empty.xlsx")).toString("base64");
  const single = readFileSync(join(inject("practiceFolder"), "soundfold.html"), "utf8");
  writeFileSync(page, withOwnBook(single, "hill-farm.xlsx", book));
});
afterAll(() => rmSync(folder, { recursive: true }));

const with2 = async ({ keys }: Driven, held: string, key: string): Promise<void> => {
  await keys.down(held);
  await keys.press(key);
  await keys.up(held);
};

const saysOf = (driven: Driven, wanted: RegExp): Promise<string> =>
  until(
    () => driven.text(".status"),
    (text) => wanted.test(text),
    String(wanted),
  );

/** Types a column downwards, and goes back to its first cell. */
async function typeDown(driven: Driven, column: string, first: number, entries: readonly string[]): Promise<void> {
  for (const [place, entry] of entries.entries()) {
    await saysOf(driven, new RegExp(` ${column}${first + place} `));
    await driven.keys.type(entry);
    await driven.keys.press("Enter");
  }
  await saysOf(driven, new RegExp(` ${column}${first + entries.length} `));
  for (const _ of entries) await driven.keys.press("ArrowUp");
  await saysOf(driven, new RegExp(` ${column}${first} `));
}

const right = async ({ keys }: Driven, times: number): Promise<void> => {
  for (let time = 0; time < times; time += 1) await keys.press("ArrowRight");
};

const tags = ["ZZ 0123456 00001", "ZZ 0123456 00002", "ZZ 0123456 00003"];

describe.each([
  ["Chromium", inChromium],
  ["Firefox", inFirefox],
] as const)("the adviser's one file in %s, from the disk", (_, start) => {
  it(
    "takes three cases by keyboard alone, tells who may be sold, is saved and opened again, and asks for nothing outside",
    async () => {
      const driven = await start(pathToFileURL(page).href);
      try {
        await until(
          () => driven.text(".note"),
          (text) => text.includes("hill-farm.xlsx is open."),
          "the adviser's book",
        );
        await saysOf(driven, /^Start A1 /);
        for (const sheet of ["Settings", "Gathers", "Cases"]) {
          await with2(driven, "Control", "PageDown");
          await saysOf(driven, new RegExp(`^${sheet} A1 `));
        }
        for (let row = 2; row <= 5; row += 1) {
          await driven.keys.press("ArrowDown");
          await saysOf(driven, new RegExp(`^Cases A${row} `));
        }
        await typeDown(driven, "A", 5, ["2026-09-01", "2026-10-20", "2026-10-22"]);
        const toColumn = async (from: KeyOf<typeof casesTable>, to: KeyOf<typeof casesTable>): Promise<string> => {
          await right(driven, casesTable.placeOf(to) - casesTable.placeOf(from));
          return columnOf(casesTable, to);
        };
        await typeDown(driven, await toColumn("seen", "treated"), 5, ["2026-09-01", "2026-10-20", "2026-10-22"]);
        await typeDown(driven, await toColumn("treated", "tag"), 5, tags);
        await typeDown(driven, await toColumn("tag", "withdrawalDays"), 5, ["28", "28", "0"]);
        await typeDown(driven, await toColumn("withdrawalDays", "soundOn"), 5, [
          "2026-09-10",
          "2026-10-30",
          "2026-10-30",
        ]);

        for (const sheet of ["Today", "May they go"]) {
          await with2(driven, "Control", "PageDown");
          await saysOf(driven, new RegExp(`^${sheet} A1 `));
        }
        for (let row = 2; row <= 8; row += 1) {
          await driven.keys.press("ArrowDown");
          await saysOf(driven, new RegExp(`^May they go A${row} `));
        }
        await typeDown(driven, "A", 8, tags);
        for (let row = 7; row >= 3; row -= 1) await driven.keys.press("ArrowUp");
        await right(driven, 2);
        await typeDown(driven, "C", 3, ["2026-11-10"]);
        await saysOf(driven, /^May they go C3 .*2026/);
        for (let row = 4; row <= 8; row += 1) await driven.keys.press("ArrowDown");
        // 1 September and 28 whole days end with 29 September; 20 October and 28 whole days end with 17 November.
        await saysOf(driven, /^May they go C8 yes/);
        await driven.keys.press("ArrowDown");
        await saysOf(driven, /^May they go C9 no: medicine/);

        await with2(driven, "Control", "s");
        const [saved = ""] = await until(driven.downloads, (files) => files.length > 0, "the saved workbook");
        await until(
          () => driven.text(".note"),
          (text) => text.includes("is saved among your downloads"),
          "what was done",
        );
        const workbook = openWorkbook(readFileSync(saved));
        const cases = workbook.sheets.find(({ name }) => name === "Cases");
        const sale = workbook.sheets.find(({ name }) => name === "May they go");
        expect(cases && [4, 5, 6].map((row) => cellValue(cases, row, casesTable.placeOf("treated")))).toEqual(
          ["2026-09-01", "2026-10-20", "2026-10-22"].map(dayOf),
        );
        expect(sale && [7, 8].map((row) => String(cellValue(sale, row, 4)).slice(0, 4))).toEqual(["clea", "hold"]);
        expect(sale && cellValue(sale, 8, 5)).toBe(dayOf("2026-11-18"));

        const again = join(folder, "again.xlsx");
        writeFileSync(again, readFileSync(saved));
        await driven.choose(again);
        await until(
          () => driven.text(".note"),
          (text) => text.includes("again.xlsx is open."),
          "the saved workbook, opened again",
        );
        expect(driven.abroad).toEqual([]);
        expect(driven.troubles).toEqual([]);
      } finally {
        await driven.close();
      }
    },
    8 * minutes,
  );
});
