import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import ExcelJS from "exceljs";
import { strFromU8, unzipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Cell } from "../../src/cells/cell.ts";
import { BadInput } from "../../src/cli/badInput.ts";
import { collateCommand } from "../../src/cli/commands/collateCommand.ts";
import { progressBar } from "../../src/cli/progressBar.ts";
import { funnel } from "../../src/core/benchmarking/funnel.ts";
import { collateBooks, type ReadBook } from "../../src/workbooks/collate/collateBooks.ts";
import { readFootBook } from "../../src/workbooks/collate/readFootBook.ts";
import { sheetCells } from "../samples/sheetCells.ts";
import { inventBook, type MadeBook, makeFootBook, mgOf } from "../workbooks/makeFootBook.ts";
import { faultsOf } from "../workbooks/vendorValidator.ts";
import { changeByHand, rangeByHand, steadiedByHand } from "./comparisonByHand.ts";

const good = Array.from({ length: 12 }, (_, index) => inventBook(index + 1, 30));
const total = (numbers: readonly number[]): number => numbers.reduce((sum, number) => sum + number, 0);
const counted = ({ gathers }: MadeBook, from: number, until: number) => ({
  lame: total(gathers.slice(from, until).map(({ lame }) => lame)),
  seen: total(gathers.slice(from, until).map(({ seen }) => seen)),
});
const yearOf = ({ gathers }: MadeBook, which: "before" | "now") =>
  which === "before" ? gathers.slice(0, 12) : gathers.slice(12);
const thisYear = good.map((book) => counted(book, 12, 24));

let folder: string;
let books: string;

interface Ended {
  readonly output: string;
  readonly errors: string;
  readonly progress: readonly string[];
}

/** Runs the command where the test runs. */
async function collate(...given: readonly string[]): Promise<Ended> {
  const [said, progress]: [string[], string[]] = [[], []];
  const terminal = {
    say: (text: string) => void said.push(text),
    progress: (words: string) => void progress.push(words),
    progressDone: () => undefined,
  };
  const errors = await collateCommand.run(given, terminal).then(
    () => "",
    (error: unknown) => {
      if (error instanceof BadInput) return error.message;
      throw error;
    },
  );
  return { output: said.join("\n"), errors, progress };
}

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
  // How a workbook with a password begins, and the name under which it keeps its content.
  const locked = Buffer.concat([Buffer.from("d0cf11e0a1b11ae1", "hex"), Buffer.from("EncryptedPackage", "utf16le")]);
  writeFileSync(join(books, "spoiled-locked.xlsx"), locked);
  const other = new ExcelJS.Workbook();
  other.addWorksheet("Fences").getCell("A1").value = "to mend";
  writeFileSync(join(books, "spoiled-other.xlsx"), new Uint8Array(await other.xlsx.writeBuffer()));
  writeFileSync(join(books, "spoiled-twice.xlsx"), await makeFootBook(inventBook(3, 30), { farm: " farm  3" }));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function rowsOf(cells: ReadonlyMap<string, Cell>, sheet: string, first: number): readonly (readonly Cell[])[] {
  const rows: Cell[][] = [];
  for (let row = first; cells.has(`${sheet}!A${row}`); row++)
    rows.push([..."ABCDEFGHIJKLMNO"].map((column) => cells.get(`${sheet}!${column}${row}`) ?? null));
  return rows;
}

const pageOf = (pages: string, farm: string): ReadonlyMap<string, Cell> =>
  sheetCells(readFileSync(join(pages, `Flock page ${farm}.xlsx`)));

/** What stands beside each figure of a page: value, low, high, words. */
function linesOf(page: ReadonlyMap<string, Cell>): ReadonlyMap<string, readonly Cell[]> {
  const lines = new Map<string, readonly Cell[]>();
  for (const [address, cell] of page) {
    const row = /^Flock page!A(\d+)$/.exec(address)?.[1];
    if (row !== undefined && typeof cell === "string")
      lines.set(
        cell,
        [..."BCDE"].map((column) => page.get(`Flock page!${column}${row}`) ?? null),
      );
  }
  return lines;
}

describe("collate over twelve books and seven spoiled ones", () => {
  let ended: Ended;
  let cells: ReadonlyMap<string, Cell>;
  let pages: string;
  beforeAll(async () => {
    const out = join(folder, "round.xlsx");
    pages = join(folder, "pages");
    ended = await collate(books, "--out", out, "--pages", pages);
    cells = sheetCells(readFileSync(out));
    // Working the comparison out takes seconds, and minutes on a machine that does much else.
  }, 300_000);

  test("twelve are used, seven named with their reasons", () => {
    expect(ended.errors).toBe("");
    expect(ended.progress[5]).toBe("[######------------------] 5 of 19  book 06.xlsx");
    expect(ended.output).toContain("12 of 19 files used, for 2026.");
    for (const line of [
      /spoiled-cut\.xlsx +The file is damaged or cut short/,
      /spoiled-headings\.xlsx +No table of gathers in it/,
      /spoiled-locked\.xlsx +The workbook is protected by a password/,
      /spoiled-old\.xlsx +No gathers in 2026 in it/,
      /spoiled-other\.xlsx +No table of gathers in it/,
      /spoiled-text\.xlsx +/,
      /spoiled-twice\.xlsx +The same flock as book 03\.xlsx/,
    ])
      expect(ended.output).toMatch(line);
    const lines = rowsOf(cells, "Books", 6);
    expect(lines).toHaveLength(19);
    expect(lines.filter(([, , used]) => used === "no").map(([file]) => file)).toEqual([
      "spoiled-cut.xlsx",
      "spoiled-headings.xlsx",
      "spoiled-locked.xlsx",
      "spoiled-old.xlsx",
      "spoiled-other.xlsx",
      "spoiled-text.xlsx",
      "spoiled-twice.xlsx",
    ]);
  });

  test("each flock's row holds what stands in its book", () => {
    const rows = rowsOf(cells, "Flocks", 10);
    // Farm 2 before Farm 10.
    expect(rows.map(([name]) => name)).toEqual(good.map(({ farm }) => farm));
    good.forEach((book, index) => {
      const [before, now] = [book.gathers.slice(0, 12), book.gathers.slice(12)];
      const counts = [now, before].flatMap((gathers) => [
        total(gathers.map(({ seen }) => seen)),
        total(gathers.map(({ lame }) => lame)),
      ]);
      expect(rows[index]?.slice(1, 6)).toEqual([...counts, book.cases.length]);
      expect(rows[index]?.[6]).toBeCloseTo(mgOf(book), 6);
      expect(rows[index]?.slice(7, 10)).toEqual([300, 400, 0.03]);
    });
  });

  test("and the comparison is worked out from it", () => {
    const rows = rowsOf(cells, "Comparison", 10);
    expect(rows).toHaveLength(12);
    const steadied = steadiedByHand(thisYear);
    const bestFirst = [...steadied].sort((one, other) => one - other);
    thisYear.forEach((flock, index) => {
      const row = rows[index] ?? [];
      const near = (value: number, digits: number) => expect.closeTo(value, digits);
      const wanted = [flock.lame / flock.seen, ...rangeByHand(yearOf(good[index] as MadeBook, "now"))];
      // The other library has nine digits of Student's t.
      expect(row.slice(3, 7)).toEqual([12, ...wanted.map((value) => near(value, 7))]);
      const share = steadied[index] ?? Number.NaN;
      expect(row.slice(8, 10)).toEqual([near(share, 3), bestFirst.indexOf(share) + 1]);
    });
  });

  test("the funnel allows for flocks that differ", () => {
    const flocks = funnel(
      good.map(({ farm }) => farm),
      thisYear.map(({ lame }) => lame),
      thisYear.map(({ seen }) => seen),
      undefined,
      true,
    );
    expect(rowsOf(cells, "Comparison", 10).map((row) => row[7])).toEqual(flocks.map(({ word }) => word));
  });

  test.each([0, 4, 8])("with the same answers as by hand for book %i", (index) => {
    const book = good[index] as MadeBook;
    const [before, now] = [yearOf(book, "before"), yearOf(book, "now")];
    const { lame, seen } = counted(book, 12, 24);
    const row = rowsOf(cells, "Comparison", 10).find(([name]) => name === book.farm) ?? [];
    expect(row.slice(1, 5)).toEqual([seen, lame, 12, lame / seen]);
    const close = (number: number) => expect.closeTo(number, 7);
    expect(row.slice(5, 7)).toEqual(rangeByHand(now).map(close));
    expect(row.slice(10, 13)).toEqual(changeByHand(before, now).map(close));
    // At the confidence 1 − p the range ends at no change.
    const [change, low, high] = changeByHand(before, now, 1 - Number(row[13]));
    expect(change < 0 ? high : low).toBeCloseTo(0, 7);
    // mg for each kg: 75 kg a breeding sheep and 20 kg a lamb sold (EMA 2011).
    expect(row[14]).toEqual(close(mgOf(book) / (300 * 75 + 400 * 20)));
  });

  test("there is a page for each flock, with the digits of the comparison", () => {
    expect(ended.output).toContain(`12 pages, one a flock: ${pages}`);
    expect(readdirSync(pages).sort()).toEqual(good.map(({ farm }) => `Flock page ${farm}.xlsx`).sort());
    const rows = rowsOf(cells, "Comparison", 10);
    good.forEach(({ farm }, index) => {
      const lines = linesOf(pageOf(pages, farm));
      const [, , , , share, low, high, word, steadied, rank, change, changeLow, changeHigh, , mgPcu] =
        rows[index] ?? [];
      expect(lines.get("Share lame")?.slice(0, 3)).toEqual([share, low, high]);
      expect(lines.get("All flocks, with limits")?.[3]).toBe(
        `among flocks that differ as these do, this one is ${word} for so many sheep`,
      );
      expect(lines.get("Steadied share")?.[0]).toBe(steadied);
      expect(lines.get("Rank by it, 1 the lowest")?.[0]).toBe(rank);
      expect(lines.get("Since the year before")?.slice(0, 3)).toEqual([change, changeLow, changeHigh]);
      expect(lines.get("Antibiotics, mg/PCU")?.[0]).toBe(mgPcu);
      expect(lines.get("Against the target of 3 %")?.[3]).toBe(cells.get(`Comparison!P${10 + index}`));
    });
  });

  test("what is done stands in the comparison too, with the digits of the pages and why what is missing is missing", () => {
    const head = new Map([..."ABCDEFGHIJKLMNOPQRS"].map((column) => [cells.get(`What is done!${column}7`), column]));
    const under = (heading: string, index: number, step = 0): Cell => {
      const column = head.get(heading) ?? "";
      return cells.get(`What is done!${String.fromCharCode(column.charCodeAt(0) + step)}${8 + index}`) ?? null;
    };
    good.forEach(({ farm }, index) => {
      expect(under("flock", index)).toBe(farm);
      const lines = linesOf(pageOf(pages, farm));
      for (const [heading, label] of [
        ["new cases, 100 sheep a year", "New cases, 100 sheep a year"],
        ["treated within 3 days", "Treated within 3 days"],
        ["sound within 14 days", "Sound within 14 days"],
      ] as const)
        expect([0, 1, 2].map((step) => under(heading, index, step))).toEqual(lines.get(label)?.slice(0, 3));
      expect(under("mg/PCU", index)).toBe(lines.get("Antibiotics, mg/PCU")?.[0]);
      expect(under("footrot", index)).toBe(lines.get("Of footrot")?.[0]);
      // The made books do not say up to which day they are complete.
      expect(under("not counted, or left out", index)).toBe(
        "new cases, treated, sound: the book does not say up to which day it is complete (As of, in its settings)",
      );
    });
  });

  test("the comparison has nothing against it by the vendor's validator", () => {
    expect(faultsOf(join(folder, "round.xlsx"))).toEqual([]);
  }, 120_000);

  test("a page holds values only, no hidden sheet, and no name of another flock or of a file", () => {
    for (const { farm } of good) {
      const parts = Object.entries(unzipSync(readFileSync(join(pages, `Flock page ${farm}.xlsx`))));
      const text = parts.map(([name, content]) => `${name}\n${strFromU8(content)}`).join("\n");
      expect(new Set(text.match(/Farm +\d+/gi))).toEqual(new Set([farm]));
      expect(/book \d|spoiled|soundfold-collate/i.exec(text)?.[0]).toBeUndefined();
      // A chart names cells of its own sheet in what its format calls a formula.
      const cellsAndNames = parts
        .filter(([name]) => !name.startsWith("xl/charts/"))
        .map(([, content]) => strFromU8(content))
        .join("\n");
      expect(parts.filter(([name]) => name.startsWith("xl/worksheets/sheet"))).toHaveLength(1);
      expect(/<f[ >]|<formula|state="(?:veryH|h)idden"|hidden="1"/.exec(cellsAndNames)?.[0]).toBeUndefined();
    }
  });

  test("by letters all pages call a flock the same, in the order of the shares", () => {
    const byShare = thisYear
      .map(({ lame, seen }, index) => ({ share: lame / seen, farm: good[index]?.farm ?? "" }))
      .sort((one, other) => one.share - other.share)
      .map(({ farm }) => farm);
    const steadied = good.map((_, index) => rowsOf(cells, "Comparison", 10)[index]?.[8]);
    for (const { farm } of good) {
      const page = pageOf(pages, farm);
      const shown = Array.from({ length: 12 }, (_, step) => [
        page.get(`Flock page!G${6 + step}`),
        page.get(`Flock page!H${6 + step}`),
      ]);
      const wanted = byShare.map((name, index) => [
        name === farm ? farm : String.fromCharCode(65 + index),
        steadied[good.findIndex((book) => book.farm === name)],
      ]);
      expect(new Map(shown as [string, Cell][])).toEqual(new Map(wanted as [string, Cell][]));
    }
  });

  test("a page has nothing against it by the vendor's validator", () => {
    expect(faultsOf(join(pages, "Flock page Farm 1.xlsx"))).toEqual([]);
  }, 120_000);
});

test("--letters names no flock and no file in the workbook, and gives the key", () => {
  const read = readdirSync(books)
    .sort()
    .map((file): ReadBook => {
      try {
        return { file, read: readFootBook(readFileSync(join(books, file))) };
      } catch (error) {
        return { file, read: { reason: (error as Error).message } };
      }
    });
  const made = "2026-10-31";
  const collated = collateBooks(read, { year: 2025, letters: true, made });
  if (!collated) throw new Error("no book can be used");
  expect(JSON.stringify(collated.content)).not.toMatch(/farm \d|book \d|spoiled|gathers in 20/i);
  // Farm 99 has gathers in 2025 only.
  expect(collated.content.flocks.map(({ flock }) => flock)).toEqual([..."ABCDEFGHIJKLM"]);
  const shares = collated.content.flocks.map(({ lame = 0, lookedAt = 1 }) => lame / lookedAt);
  expect(shares).toEqual([...shares].sort((one, other) => one - other));
  const named = collateBooks(read, { year: 2025, letters: false, made });
  for (const [place, { letter, flock }] of collated.key.entries()) {
    expect(letter).toBe(collated.content.flocks[place]?.flock);
    const its = named?.content.flocks.find((candidate) => candidate.flock === flock);
    expect(its).toEqual({ ...collated.content.flocks[place], flock });
  }
  expect(named?.key).toEqual([]);
});

describe("collate refuses", () => {
  test("a file that is there", async () => {
    const there = join(books, "book 01.xlsx");
    const { errors } = await collate(books, "--out", there);
    expect(errors).toBe(`${there} is already there and is never replaced; name another with --out.`);
  });

  test("a year without gathers, and writes nothing", async () => {
    const out = join(folder, "none.xlsx");
    const { errors } = await collate(books, "--out", out, "--year", "2019");
    expect(errors).toMatch(/None of the 19 files .* can be used, so nothing was written:/);
    expect(errors).toMatch(/book 01\.xlsx +No gathers in 2019 in it\./);
    expect(() => readFileSync(out)).toThrow();
  });

  test("pages among the books, or where something is", async () => {
    const out = join(folder, "y.xlsx");
    const among = await collate(books, "--out", out, "--pages", join(books, "."));
    expect(among.errors).toBe(`The pages cannot go among the books in ${books}; name another folder with --pages.`);
    const full = await collate(books, "--out", out, "--pages", folder);
    expect(full.errors).toBe(`${folder} is not empty, and nothing in it is replaced; name a new folder with --pages.`);
    const file = await collate(books, "--out", out, "--pages", join(books, "book 01.xlsx"));
    expect(file.errors).toMatch(/cannot be used for the pages: it is a file, not a folder\.$/);
    expect(() => readFileSync(out)).toThrow();
  });

  test.each(["5", "0", "100%", "five"])("%s as a target", async (target) => {
    const { errors } = await collate(books, "--out", join(folder, "z.xlsx"), "--target", target);
    expect(errors).toBe(`"${target}" is no share above 0 and below 100 %; give it as --target 5% or --target 0.05.`);
  });

  test("what is no year, and a folder that is not there", async () => {
    const out = join(folder, "x.xlsx");
    expect((await collate(books, "--out", out, "--year", "26")).errors).toBe(
      '"26" is not a year; give it as --year 2026.',
    );
    const none = await collate(join(folder, "nowhere"), "--out", out);
    expect(none.errors).toContain("nowhere; collate reads the workbooks of a folder.");
  });
});

test("the progress bar fills", () => {
  expect(progressBar(0, 4, "a.xlsx")).toBe("[------------------------] 0 of 4  a.xlsx");
  expect(progressBar(3, 4, "d.xlsx")).toBe("[##################------] 3 of 4  d.xlsx");
});
