import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Cell } from "../../src/cells/cell.ts";
import { progressBar } from "../../src/cli/progressBar.ts";
import { sheetCells } from "../samples/sheetCells.ts";
import { inventBook, makeFootBook, mgOf } from "../templates/makeFootBook.ts";
import { type Ended, runSoundfold } from "./runSoundfold.ts";

const good = Array.from({ length: 12 }, (_, place) => inventBook(place + 1, 30));
const total = (numbers: readonly number[]): number => numbers.reduce((sum, number) => sum + number, 0);

let folder: string;
let books: string;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "soundfold-collate-"));
  books = mkdtempSync(join(folder, "books-"));
  for (const [place, book] of good.entries())
    writeFileSync(join(books, `book ${String(place + 1).padStart(2, "0")}.xlsx`), await makeFootBook(book));
  const first = inventBook(1, 30);
  const whole = await makeFootBook(first);
  writeFileSync(join(books, "spoiled-cut.xlsx"), whole.slice(0, whole.length / 2));
  writeFileSync(join(books, "spoiled-headings.xlsx"), await makeFootBook(first, { heading: (text) => `my ${text}` }));
  writeFileSync(
    join(books, "spoiled-old.xlsx"),
    await makeFootBook({ ...inventBook(99, 5), gathers: first.gathers.slice(0, 12) }),
  );
  writeFileSync(join(books, "spoiled-text.xlsx"), "Farm,Lame\n");
  writeFileSync(join(books, "spoiled-twice.xlsx"), await makeFootBook(inventBook(3, 30), { farm: " farm  3" }));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function rowsOf(cells: ReadonlyMap<string, Cell>, sheet: string, first: number): readonly (readonly Cell[])[] {
  const rows: Cell[][] = [];
  for (let row = first; cells.has(`${sheet}!A${row}`); row++)
    rows.push([..."ABCDEFGHIJK"].map((column) => cells.get(`${sheet}!${column}${row}`) ?? null));
  return rows;
}

describe("collate over twelve books and five spoiled ones", () => {
  let ended: Ended;
  let cells: ReadonlyMap<string, Cell>;
  beforeAll(async () => {
    const out = join(folder, "round.xlsx");
    ended = await runSoundfold(["collate", books, "--out", out]);
    cells = sheetCells(readFileSync(out));
  });

  test("twelve are used, five named with their reasons", () => {
    expect(ended).toMatchObject({ code: 0, errors: "" });
    expect(ended.output).toContain("12 of 17 files used, for 2026.");
    for (const line of [
      /spoiled-cut\.xlsx +The file is damaged or cut short/,
      /spoiled-headings\.xlsx +No table of gathers in it/,
      /spoiled-old\.xlsx +No gathers in 2026 in it/,
      /spoiled-text\.xlsx +/,
      /spoiled-twice\.xlsx +The same flock as book 03\.xlsx/,
    ])
      expect(ended.output).toMatch(line);
    const lines = rowsOf(cells, "Books", 6);
    expect(lines).toHaveLength(17);
    expect(lines.filter(([, , used]) => used === "no").map(([file]) => file)).toEqual([
      "spoiled-cut.xlsx",
      "spoiled-headings.xlsx",
      "spoiled-old.xlsx",
      "spoiled-text.xlsx",
      "spoiled-twice.xlsx",
    ]);
  });

  test("each flock's row holds what stands in its book", () => {
    const byName = [...good].sort((one, other) => (one.farm.toLowerCase() < other.farm.toLowerCase() ? -1 : 1));
    const rows = rowsOf(cells, "Flocks", 10);
    expect(rows.map(([name]) => name)).toEqual(byName.map(({ farm }) => farm));
    byName.forEach((book, place) => {
      const [before, now] = [book.gathers.slice(0, 12), book.gathers.slice(12)];
      const counts = [now, before].flatMap((gathers) => [
        total(gathers.map(({ seen }) => seen)),
        total(gathers.map(({ lame }) => lame)),
      ]);
      expect(rows[place]?.slice(1, 6)).toEqual([...counts, book.cases.length]);
      expect(rows[place]?.[6]).toBeCloseTo(mgOf(book), 6);
      expect(rows[place]?.slice(7, 10)).toEqual([300, 400, 0.03]);
    });
  });

  test("and the comparison is worked out from it", () => {
    const rows = rowsOf(cells, "Comparison", 10);
    expect(rows).toHaveLength(12);
    for (const row of rows) {
      expect(row[3]).toBeCloseTo(Number(row[2]) / Number(row[1]), 12);
      expect(Number(row[4])).toBeLessThan(Number(row[3]));
      expect(Number(row[5])).toBeGreaterThan(Number(row[3]));
    }
    expect(rows.map((row) => row[8]).sort((one, other) => Number(one) - Number(other))).toEqual(
      rows.map((_, place) => place + 1),
    );
  });
});

test("--letters names no flock and no file in the workbook, and gives the key", async () => {
  const out = join(folder, "letters.xlsx");
  const ended = await runSoundfold(["collate", books, "--out", out, "--letters", "--year", "2025"]);
  expect(ended.code).toBe(0);
  const texts = [...sheetCells(readFileSync(out)).values()].filter((cell) => typeof cell === "string");
  expect(texts.filter((text) => /farm \d|book \d|spoiled/i.test(text))).toEqual([]);
  const cells = sheetCells(readFileSync(out));
  // Farm 99 has gathers in 2025 only.
  expect(rowsOf(cells, "Flocks", 10).map(([name]) => name)).toEqual([..."ABCDEFGHIJKLM"]);
  expect(ended.output).toMatch(/The key, which is not in the file:\n +A +Farm \d+ +/);
});

describe("collate refuses", () => {
  test("a file that is there", async () => {
    const there = join(books, "book 01.xlsx");
    const { code, errors } = await runSoundfold(["collate", books, "--out", there]);
    expect({ code, errors }).toEqual({
      code: 2,
      errors: `${there} is already there and is never replaced; name another with --out.\n`,
    });
  });

  test("a year without gathers, and writes nothing", async () => {
    const out = join(folder, "none.xlsx");
    const { code, errors } = await runSoundfold(["collate", books, "--out", out, "--year", "2019"]);
    expect(code).toBe(2);
    expect(errors).toMatch(/None of the 17 files .* can be used, so nothing was written:/);
    expect(errors).toMatch(/book 01\.xlsx +No gathers in 2019 in it\./);
    expect(() => readFileSync(out)).toThrow();
  });

  test("what is no year, and a folder that is not there", async () => {
    const year = await runSoundfold(["collate", books, "--out", join(folder, "x.xlsx"), "--year", "26"]);
    expect(year).toMatchObject({ code: 2, errors: '"26" is not a year; give it as --year 2026.\n' });
    const none = await runSoundfold(["collate", join(folder, "nowhere"), "--out", join(folder, "x.xlsx")]);
    expect(none.code).toBe(2);
    expect(none.errors).toContain("nowhere cannot be read: there is no such file.");
  });
});

test("the progress bar fills", () => {
  expect(progressBar(0, 4, "a.xlsx")).toBe("[------------------------] 0 of 4  a.xlsx");
  expect(progressBar(3, 4, "d.xlsx")).toBe("[##################------] 3 of 4  d.xlsx");
});
