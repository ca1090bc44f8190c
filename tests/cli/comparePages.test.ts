import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { DuckDBInstance } from "@duckdb/node-api";
import { unzipSync } from "fflate";
import { afterAll, beforeAll, expect, test } from "vitest";
import { dayOf, isoText } from "../../src/cells/day.ts";
import { BadInput } from "../../src/cli/badInput.ts";
import { collateCommand } from "../../src/cli/commands/collateCommand.ts";
import { compareCommand } from "../../src/cli/commands/compareCommand.ts";
import { mgPerPcu } from "../../src/core/medicines/mgPerPcu.ts";
import { sheetCells } from "../samples/sheetCells.ts";
import { inventBook, type MadeBook, makeFootBook, mgOf } from "../workbooks/makeFootBook.ts";

let folder: string;
let made: readonly MadeBook[];
const at = (...names: readonly string[]): string => join(folder, ...names);

async function run(command: typeof compareCommand, ...given: readonly string[]): Promise<string> {
  const said: string[] = [];
  const say = (text: string) => void said.push(text);
  await command.run(given, { say, progress: () => undefined, progressDone: () => undefined });
  return said.join("\n");
}

const refusal = (...given: readonly string[]): Promise<string> =>
  run(compareCommand, ...given).then(
    () => "",
    (error: unknown) => {
      if (error instanceof BadInput) return error.message;
      throw error;
    },
  );

async function linesOf(file: string): Promise<ReadonlyMap<string, Readonly<Record<string, unknown>>>> {
  const instance = await DuckDBInstance.create(":memory:");
  const duck = await instance.connect();
  const rows = await (await duck.run(`SELECT * FROM read_parquet('${file}')`)).getRowObjects();
  duck.closeSync();
  instance.closeSync();
  return new Map(rows.map((row) => [String(row.Flock), row]));
}

/** The figures of a page, by their labels. */
function figuresOf(file: string): ReadonlyMap<string, readonly unknown[]> {
  const cells = sheetCells(readFileSync(file));
  const figures = new Map<string, readonly unknown[]>();
  for (let row = 1; row <= 40; row++) {
    const label = cells.get(`Flock page!A${row}`);
    if (typeof label === "string")
      figures.set(
        label,
        ["B", "C", "D", "E"].map((column) => cells.get(`Flock page!${column}${row}`) ?? null),
      );
  }
  return figures;
}

// Names that are in no word of a page.
const csvFlocks = ["Quernmoor", "Zwetschge", "Ullapool East"];

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "soundfold-pages-"));
  const books = at("books");
  mkdirSync(books);
  made = [1, 2, 3].map((seed) => ({ ...inventBook(seed, 20), farm: `Xylo ${seed}` }));
  for (const [place, book] of made.entries()) writeFileSync(join(books, `${place}.xlsx`), await makeFootBook(book));
  const rows = csvFlocks.flatMap((flock, place) =>
    Array.from({ length: 24 }, (_, month) => {
      const day = isoText(dayOf("2025-01-10") + 30 * month);
      return `${flock},${day},${60 + month},${1 + ((month * (place + 2)) % 5)}`;
    }),
  );
  writeFileSync(at("gathers.csv"), ["Flock,Date,Looked at,Lame", ...rows].join("\n"));
  // One record of a flock that has a book.
  writeFileSync(
    at("cases.csv"),
    "Flock,Tag,Treated\nQuernmoor,999012345600007,2026-02-01\nXylo 2,999012345600008,2026-02-01\n",
  );
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const records = () => [at("books"), at("gathers.csv"), at("cases.csv")];

test("a page has the figures of its line, its own name, and no other flock's name in any part of its file", async () => {
  const said = await run(
    compareCommand,
    ...records(),
    ...["--out", at("out.parquet"), "--year", "2026", "--pages", at("pages"), "--target", "5%"],
  );
  expect(said).toContain(`6 pages, one a flock: ${at("pages")}`);
  const lines = await linesOf(at("out.parquet"));
  const names = [...lines.keys()];
  expect(names).toHaveLength(6);
  expect(readdirSync(at("pages"))).toHaveLength(6);
  for (const [flock, line] of lines) {
    const file = at("pages", `Flock page ${flock}.xlsx`);
    const figures = figuresOf(file);
    expect(figures.get("Share lame")?.slice(0, 3)).toEqual([line["Share lame"], line.Low, line.High]);
    expect(figures.get("Steadied share")?.slice(0, 3)).toEqual([
      line["Steadied share"],
      line["Steadied low"],
      line["Steadied high"],
    ]);
    expect(figures.get("Rank by it, 1 the lowest")?.[0]).toBe(line.Rank);
    expect(figures.get("All flocks, with limits")?.[3]).toContain(line["In the funnel"]);
    expect(figures.get("Antibiotics, mg/PCU")?.[0]).toBe(line["mg/PCU"]);
    const parts = Object.entries(unzipSync(readFileSync(file)));
    const all = parts.map(([name, bytes]) => `${name}\n${new TextDecoder().decode(bytes)}`).join("\n");
    expect(all).toContain(flock);
    for (const other of names) if (other !== flock) expect(all).not.toContain(other);
    expect(all).not.toContain(folder);
  }
});

test("mg/PCU is what collate counts, and where it cannot be counted it is said why", async () => {
  await run(compareCommand, at("books"), "--out", at("books.parquet"), "--year", "2026", "--pages", at("of books"));
  await run(collateCommand, at("books"), "--out", at("c.xlsx"), "--year", "2026", "--pages", at("collated"));
  const lines = await linesOf(at("books.parquet"));
  for (const book of made) {
    // 300 breeding sheep and 400 lambs sold stand in the settings of these books.
    expect(lines.get(book.farm)?.["mg/PCU"]).toBeCloseTo(mgPerPcu(mgOf(book), 300, 400), 9);
    const name = `Flock page ${book.farm}.xlsx`;
    expect(figuresOf(at("of books", name))).toEqual(figuresOf(at("collated", name)));
  }
  await run(compareCommand, ...records(), "--out", at("mixed.parquet"), "--year", "2026");
  const mixed = await linesOf(at("mixed.parquet"));
  expect(mixed.get("Xylo 1")?.["mg/PCU"]).toBe(lines.get("Xylo 1")?.["mg/PCU"]);
  expect(mixed.get("Xylo 2")).toMatchObject({
    "mg/PCU": null,
    "mg/PCU not counted": expect.stringContaining("beside the foot book"),
  });
  expect(mixed.get("Quernmoor")).toMatchObject({
    "mg/PCU": null,
    "mg/PCU not counted": "csv and Parquet files do not hold it",
  });
});

test("pages of the flocks asked for, however their names are spelled", async () => {
  await run(
    compareCommand,
    ...records(),
    ...["--out", at("two.csv"), "--year", "2026", "--pages", at("two")],
    ...["--flock", "quernmoor ", "--flock", "XYLO 3"],
  );
  expect(readdirSync(at("two")).sort()).toEqual(["Flock page Quernmoor.xlsx", "Flock page Xylo 3.xlsx"]);
  const figures = figuresOf(at("two", "Flock page Quernmoor.xlsx"));
  expect(figures.get("Cases that began in the year")?.[0]).toBe(1);
  expect(figures.get("Antibiotics, mg/PCU")).toEqual([
    null,
    null,
    null,
    "not counted: csv and Parquet files do not hold it",
  ]);
});

test("of thousands of flocks pages are for those that are named, and a chart draws some of the others", async () => {
  const rows = Array.from({ length: 700 }, (_, place) => `Fold ${place},2026-03-01,100,${place % 9}`);
  writeFileSync(at("many.csv"), ["Flock,Date,Looked at,Lame", ...rows].join("\n"));
  expect(await refusal(at("many.csv"), "--out", at("m.csv"), "--pages", at("all"))).toContain(
    "700 flocks are more than the 500 pages that are written at once; name those that are to get one with --flock NAME",
  );
  expect(readdirSync(folder)).not.toContain("m.csv");
  await run(compareCommand, at("many.csv"), ...["--out", at("m.csv"), "--pages", at("one"), "--flock", "Fold 31"]);
  const cells = sheetCells(readFileSync(at("one", "Flock page Fold 31.xlsx")));
  const letters = [...cells].filter(([place]) => /^Flock page!G\d+$/.test(place)).map(([, value]) => value);
  expect(letters).toContain("Fold 31");
  // The heading of the chart's cells, and as many flocks as it draws.
  expect(letters.length).toBeLessThanOrEqual(62);
  expect(letters.length).toBeGreaterThan(50);
}, 60_000);

test.each([
  [["--flock", "Quernmoor"], "--flock is for pages; name the folder that they go into with --pages FOLDER"],
  [["--pages", "p", "--by", "month"], "--pages goes with --by flock"],
  [["--pages", "p", "--flock", "Nobody"], 'No flock in the records is called "Nobody"'],
  [["--pages", "p", "--target", "5"], '"5" is no share above 0 and below 100 %'],
])("%j is refused in words", async (given, words) => {
  const there = given.map((word) => (word === "p" ? at("p") : word));
  expect(await refusal(at("gathers.csv"), "--out", at("refused.csv"), ...there)).toContain(words);
  expect(readdirSync(folder)).not.toContain("refused.csv");
});
