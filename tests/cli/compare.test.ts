import { existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { DuckDBInstance } from "@duckdb/node-api";
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import { caseTableFunction } from "../../functions/animals/caseTable.ts";
import { funnelFunction } from "../../functions/benchmarking/funnel.ts";
import { shrunkPrevalenceFunction } from "../../functions/benchmarking/shrunkPrevalence.ts";
import { prevalenceRangeFunction } from "../../functions/counting/prevalenceRange.ts";
import { lameWatchFunction } from "../../functions/watching/lameWatch.ts";
import type { Cell } from "../../src/cells/cell.ts";
import { dayOf, isoText } from "../../src/cells/day.ts";
import { BadInput } from "../../src/cli/badInput.ts";
import { compareCommand } from "../../src/cli/commands/compareCommand.ts";
import type { AnyFunction } from "../../src/definition/defineFunction.ts";
import { evaluate } from "../../src/definition/evaluate.ts";
import type { Argument } from "../../src/reading/readArguments.ts";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import { seededRandom } from "../../src/workbooks/inventedFlock/seededRandom.ts";
import { inventBook, makeFootBook } from "../workbooks/makeFootBook.ts";

interface Gather {
  readonly flock: string;
  readonly day: number;
  readonly group: string;
  readonly seen: number;
  readonly lame: number;
}
interface CaseRecord {
  readonly flock: string;
  readonly tag: string;
  readonly day: number;
}

let folder: string;
let gathers: readonly Gather[];
let cases: readonly CaseRecord[];

const at = (name: string): string => join(folder, name);
const flockNames = Array.from({ length: 9 }, (_, index) => `Farm ${index + 1}`);

/** The answer of a function of the catalogue. */
function answer(definition: AnyFunction, ...given: readonly Argument[]): readonly (readonly Cell[])[] {
  const outcome = evaluate(definition, given);
  if (!outcome.ok) throw new Error(outcome.message);
  return outcome.cells;
}
const column = (cells: readonly Cell[]): Argument => cells.map((cell) => [cell]);

async function compare(...given: readonly string[]): Promise<string> {
  const said: string[] = [];
  const terminal = {
    say: (text: string) => void said.push(text),
    progress: () => undefined,
    progressDone: () => undefined,
  };
  await compareCommand.run(given, terminal);
  return said.join("\n");
}

const refusal = (...given: readonly string[]): Promise<string> =>
  compare(...given).then(
    () => "",
    (error: unknown) => {
      if (error instanceof BadInput) return error.message;
      throw error;
    },
  );

/** A file as the database reads it back, with its own general reader. */
async function inSql(sql: string): Promise<readonly Readonly<Record<string, unknown>>[]> {
  const instance = await DuckDBInstance.create(":memory:");
  const duck = await instance.connect();
  const rows = await (await duck.run(sql)).getRowObjects();
  duck.closeSync();
  instance.closeSync();
  return rows;
}

const linesOf = (name: string) => inSql(`SELECT * FROM read_parquet('${at(name)}')`);

const csv = (rows: readonly (readonly (string | number)[])[]): string =>
  `${rows.map((row) => row.map((cell) => `"${cell}"`).join(",")).join("\n")}\n`;

const gatherHeadings = ["Flock", "Date", "Group", "Looked at", "Lame"];
const caseHeadings = ["Flock", "Tag", "Seen lame", "Treated", "Group"];

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "soundfold-compare-test-"));
  const random = seededRandom(11);
  gathers = flockNames.flatMap((flock, index) =>
    Array.from({ length: 40 }, (_, step): Gather => {
      const seen = random.whole(20, 150);
      const lame = Array.from({ length: seen }, () => random.happens(0.02 + 0.01 * index)).filter(Boolean).length;
      const day = dayOf("2025-01-10") + 30 * Math.floor(step / 2);
      return { flock, day, group: step % 2 === 0 ? "ewes" : "lambs", seen, lame };
    }),
  );
  cases = flockNames.flatMap((flock) =>
    Array.from({ length: 120 }, () => ({
      flock,
      tag: `ZZ 0123456 ${String(random.whole(1, 25)).padStart(5, "0")}`,
      day: dayOf("2025-02-01") + random.whole(0, 500),
    })),
  );
  const turned = [...gathers].reverse();
  writeFileSync(
    at("gathers.csv"),
    csv([
      gatherHeadings,
      ...turned.map(({ flock, day, group, seen, lame }) => [flock, isoText(day), group, seen, lame]),
    ]),
  );
  writeFileSync(
    at("cases.csv"),
    csv([caseHeadings, ...cases.map(({ flock, tag, day }) => [flock, tag, isoText(day), "", ""])]),
  );
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe("the same digits as the functions", () => {
  const inYear = ({ day }: { readonly day: number }): boolean => isoText(day).startsWith("2025");

  test("one line a flock: counts, range, funnel, steadied share, rank, cases and signals", async () => {
    const said = await compare(at("gathers.csv"), at("cases.csv"), "--out", at("flocks.parquet"), "--year", "2025");
    expect(said).toContain("9 flocks");
    const lines = await linesOf("flocks.parquet");
    expect(lines.map((line) => line.Flock)).toEqual(flockNames);
    const year = gathers.filter(inYear);
    const counts = [
      column(year.map(({ flock }) => flock)),
      column(year.map(({ lame }) => lame)),
      column(year.map(({ seen }) => seen)),
    ];
    const [, ...funnelRows] = answer(funnelFunction, ...counts, undefined, true);
    const [shrunkHeadings = [], ...shrunkRows] = answer(shrunkPrevalenceFunction, ...counts);
    const under = (row: readonly Cell[], heading: string): Cell => row[shrunkHeadings.indexOf(heading)] ?? null;
    for (const [place, line] of lines.entries()) {
      const flock = flockNames[place] ?? "";
      const all = gathers.filter((gather) => gather.flock === flock);
      const here = all.filter(inYear);
      const [ill, seen, dates] = [
        column(here.map(({ lame }) => lame)),
        column(here.map((gather) => gather.seen)),
        column(here.map(({ day }) => day)),
      ];
      const [[low, high] = []] = answer(
        prevalenceRangeFunction,
        ill,
        seen,
        undefined,
        undefined,
        undefined,
        undefined,
        dates,
      );
      expect([line.Low, line.High]).toEqual([low, high]);
      const funnelRow = funnelRows.find(([name]) => name === flock) ?? [];
      expect([line["Looked at"], line["Share lame"], line["In the funnel"]]).toEqual([
        funnelRow[1],
        funnelRow[2],
        funnelRow[7],
      ]);
      const shrunk = shrunkRows.find(([name]) => name === flock) ?? [];
      expect(line["Steadied share"]).toBe(under(shrunk, "steadied share"));
      expect([line["Steadied low"], line["Steadied high"]]).toEqual([under(shrunk, "low"), under(shrunk, "high")]);
      expect(line.Rank).toBe(under(shrunk, "rank"));
      const own = cases.filter((record) => record.flock === flock);
      const [, ...table] = answer(
        caseTableFunction,
        column(own.map(({ tag }) => tag)),
        column(own.map(({ day }) => day)),
      );
      const first = table.filter((row) => isoText(Number(row[2])).startsWith("2025"));
      expect(first.length).toBeGreaterThan(0);
      expect(line.Cases).toBe(first.length);
      const [, ...watched] = answer(
        lameWatchFunction,
        column(all.map(({ day }) => day)),
        column(all.map(({ lame }) => lame)),
        column(all.map((gather) => gather.seen)),
      );
      const signals = watched.filter((row) => row.at(-1) !== "" && isoText(Number(row[0])).startsWith("2025"));
      expect(line.Signals).toBe(signals.length);
    }
  });

  test("the number of cases is that of the same rule in windows of SQL", async () => {
    const said = await compare(at("cases.csv"), at("gathers.csv"), "--out", at("windows.csv"));
    const [row] = await inSql(`SELECT count(*) FILTER (WHERE gap IS NULL OR gap > 14)::INTEGER AS cases FROM (
      SELECT "Seen lame" - lag("Seen lame") OVER (PARTITION BY "Flock", "Tag" ORDER BY "Seen lame") AS gap
      FROM read_csv('${at("cases.csv")}'))`);
    expect(said).toContain(`case records, which are ${row?.cases} cases`);
  });

  test("a line a month and a line a group", async () => {
    await compare(at("gathers.csv"), at("cases.csv"), "--out", at("months.parquet"), "--by", "month", "--year", "2025");
    await compare(at("gathers.csv"), "--out", at("groups.parquet"), "--by", "group", "--year", "2025");
    const months = await linesOf("months.parquet");
    for (const line of months) {
      const here = gathers.filter(
        ({ flock, day }) => flock === line.Flock && isoText(day).startsWith(String(line.Month)),
      );
      const looked = here.reduce((sum, { seen }) => sum + seen, 0);
      expect(line["Looked at"]).toBe(here.length === 0 ? null : looked);
    }
    const groups = await linesOf("groups.parquet");
    expect(groups).toHaveLength(18);
    for (const line of groups) {
      const here = gathers.filter((gather) => gather.flock === line.Flock && gather.group === line.Group);
      const [[low] = []] = answer(
        prevalenceRangeFunction,
        column(here.filter(inYear).map(({ lame }) => lame)),
        column(here.filter(inYear).map(({ seen }) => seen)),
      );
      expect(line.Low).toBe(low);
    }
  });
});

test("Parquet with real dates and numbers gives what the csv gives", async () => {
  await inSql(`COPY (SELECT * FROM read_csv('${at("gathers.csv")}')) TO '${at("typed.parquet")}' (FORMAT parquet)`);
  await inSql(`COPY (SELECT * FROM read_csv('${at("cases.csv")}')) TO '${at("typedCases.parquet")}' (FORMAT parquet)`);
  await compare(at("gathers.csv"), at("cases.csv"), "--out", at("fromCsv.parquet"));
  await compare(at("typed.parquet"), at("typedCases.parquet"), "--out", at("fromTyped.parquet"));
  expect(await linesOf("fromTyped.parquet")).toEqual(await linesOf("fromCsv.parquet"));
});

test.each(["DOUBLE", "BIGINT"])("tags kept as numbers (%s) are the animals that they are in a sheet", async (type) => {
  const tags = [999012345600042, 42, 42, 0, 99012345678901, 1_000_000_000_000_000, null, 999012345600042];
  const days = tags.map((_, index) => dayOf("2025-03-01") + 20 * index);
  const rows = tags.map((tag, index) => `('Farm 1', ${tag ?? "NULL"}::${type}, DATE '${isoText(days[index] ?? 0)}')`);
  const file = at(`tags ${type}.parquet`);
  await inSql(
    `COPY (SELECT * FROM (VALUES ${rows.join(", ")}) AS rows("Flock", "Tag", "Seen lame")) TO '${file}' (FORMAT parquet)`,
  );
  await compare(at("gathers.csv"), file, "--out", at(`tags ${type} out.parquet`), "--year", "2025");
  const [, ...table] = answer(caseTableFunction, column(tags), column(days));
  const [line] = await linesOf(`tags ${type} out.parquet`);
  expect(line?.Cases).toBe(table.filter(([, number]) => number !== "not known").length);
  const doubted = table.filter(([, number]) => number === "not known").length;
  expect(line?.["Left out"]).toBe(`${doubted} case records cannot be read: the cases are those that the others show`);
});

test("a folder of foot books is compared, and a file that is none is named", async () => {
  const books = mkdtempSync(at("books-"));
  const made = [1, 2, 3].map((seed) => inventBook(seed, 20));
  for (const [place, book] of made.entries()) writeFileSync(join(books, `${place}.xlsx`), await makeFootBook(book));
  writeFileSync(join(books, "fences.csv"), "Fence,Height\n1,2\n");
  const said = await compare(books, "--out", at("books.parquet"), "--year", "2026");
  expect(said).toMatch(/Not used:\n.*fences\.csv +Its first row holds the headings "Fence", "Height": gathers need/);
  const lines = await linesOf("books.parquet");
  for (const [place, { farm, gathers: kept, cases: given }] of made.entries()) {
    const year = kept.slice(12);
    expect(lines[place]).toMatchObject({
      Flock: farm,
      "Looked at": year.reduce((sum, { seen }) => sum + seen, 0),
      Lame: year.reduce((sum, { lame }) => sum + lame, 0),
      Cases: given.length,
    });
  }
});

test("of two books of one flock the one that collate keeps is counted, and the other is named", async () => {
  const books = mkdtempSync(at("twins-"));
  const whole = inventBook(4, 20);
  const older = { ...whole, gathers: whole.gathers.slice(0, 18), cases: whole.cases.slice(0, 5) };
  writeFileSync(join(books, "a older.xlsx"), await makeFootBook(older, { farm: ` ${whole.farm.toLowerCase()}` }));
  writeFileSync(join(books, "b whole.xlsx"), await makeFootBook(whole));
  const said = await compare(books, "--out", at("twins.parquet"));
  expect(said).toMatch(/The same flock as another book.*\n +a older\.xlsx +kept: b whole\.xlsx/);
  expect(await linesOf("twins.parquet")).toMatchObject([
    {
      "Looked at": whole.gathers.slice(12).reduce((sum, { seen }) => sum + seen, 0),
      Cases: whole.cases.length,
    },
  ]);
});

test("--letters calls flocks by letters in the order of their shares, and tells the key on the screen only", async () => {
  await compare(at("gathers.csv"), at("cases.csv"), "--out", at("named.parquet"), "--year", "2025");
  const said = await compare(
    at("gathers.csv"),
    at("cases.csv"),
    "--out",
    at("letters.csv"),
    "--year",
    "2025",
    "--letters",
  );
  const named = (await linesOf("named.parquet")).toSorted(
    (one, other) => Number(one["Share lame"]) - Number(other["Share lame"]),
  );
  const lettered = await inSql(`SELECT * FROM read_csv('${at("letters.csv")}')`);
  expect(lettered.map(({ Flock }) => Flock)).toEqual([..."ABCDEFGHI"]);
  expect(lettered.map((line) => line["Share lame"])).toEqual(named.map((line) => line["Share lame"]));
  expect((await import("node:fs")).readFileSync(at("letters.csv"), "utf8")).not.toMatch(/Farm/);
  for (const [place, line] of named.entries())
    expect(said).toMatch(new RegExp(`${"ABCDEFGHI"[place]} +${line.Flock}\\b`));
  expect(await refusal(at("gathers.csv"), "--out", at("l.csv"), "--by", "group", "--letters")).toContain(
    "does not go with",
  );
});

describe("doubt", () => {
  test("what cannot be read is said in the line of its flock and no other, and never counted as none", async () => {
    writeFileSync(
      at("doubt.csv"),
      csv([
        gatherHeadings,
        ["One", "2026-03-01", "ewes", 100, 5],
        ["One", "12/3/26", "ewes", 100, 50],
        ["Two", "2026-03-01", "ewes", 100, ""],
        ["two ", "2026-04-01", "ewes", 80, 2],
        ["Three", "2026-03-01", "ewes", 90, 3],
        ["Four", "2026-03-01", "ewes", 9, 10],
      ]),
    );
    writeFileSync(
      at("doubtCases.csv"),
      csv([
        caseHeadings,
        ["One", "0042", "2026-03-01", "", ""],
        ["Three", "", "2026-03-01", "", ""],
        ["One", "", "", "2026-03-01", "ewes"],
      ]),
    );
    const said = await compare(at("doubt.csv"), at("doubtCases.csv"), "--out", at("doubt.parquet"));
    expect(said).toContain('doubt.csv, row 3: "12/3/26" is not a date');
    const lines = await linesOf("doubt.parquet");
    const of = (flock: string) => lines.find((line) => line.Flock === flock);
    expect(of("One")).toMatchObject({
      "Looked at": 100,
      Cases: 1,
      "Left out": "1 gather cannot be read and not counted",
    });
    expect(of("Two")).toMatchObject({ "Looked at": 80, Cases: null });
    expect(of("Three")).toMatchObject({
      Cases: 0,
      "Left out": "1 case record cannot be read: the cases are those that the others show",
    });
    expect(of("Four")).toMatchObject({ "Looked at": null, "Share lame": null, "In the funnel": null, Rank: null });
  });

  test("a record without a flock may be of any, so every line says so", async () => {
    writeFileSync(
      at("unnamed.csv"),
      csv([gatherHeadings, ["A", "2026-03-01", "", 50, 1], [" ", "2026-03-01", "", 50, 9]]),
    );
    await compare(at("unnamed.csv"), "--out", at("unnamed.parquet"));
    expect(await linesOf("unnamed.parquet")).toMatchObject([
      { Flock: "A", "Looked at": 50, "Left out": "1 record without a flock may be of this one" },
    ]);
  });
});

describe("files", () => {
  test("a workbook holds the lines under their headings", async () => {
    await compare(at("gathers.csv"), "--out", at("lines.xlsx"));
    const { readFileSync } = await import("node:fs");
    expect(() => openWorkbook(readFileSync(at("lines.xlsx")))).not.toThrow();
    const sheets = (await import("../samples/sheetCells.ts")).sheetCells(readFileSync(at("lines.xlsx")));
    expect(sheets.get("Compared!A4")).toBe("Flock");
    expect(sheets.get("Compared!A13")).toBe("Farm 9");
  });

  test("nothing is replaced, and nothing is left behind", async () => {
    const before = readdirSync(folder);
    writeFileSync(at("there.csv"), "mine");
    expect(await refusal(at("gathers.csv"), "--out", at("there.csv"))).toContain("is already there");
    expect(await refusal(at("none.csv"), "--out", at("none.parquet"))).toContain("None of the files can be used");
    expect(readdirSync(folder).filter((name) => !before.includes(name))).toEqual(["there.csv"]);
    expect(existsSync(at("none.parquet"))).toBe(false);
  });

  test.each([
    [["--out", "x.ods"], "must end in .xlsx, .csv or .parquet"],
    [["--out", "x.csv", "--by", "week"], '"week" is not known to --by'],
    [["--out", "x.csv", "--year", "26"], "--year takes a whole number from 1990 to 2100"],
    [[], "compare needs records and a file to write"],
  ])("%j is refused in words", async (given, words) => {
    expect(await refusal(at("gathers.csv"), ...given)).toContain(words);
  });

  test("without the database it is said how to install it", async () => {
    vi.doMock("@duckdb/node-api", () => {
      throw new Error("Cannot find package");
    });
    vi.resetModules();
    const { compareCommand: fresh } = await import("../../src/cli/commands/compareCommand.ts");
    const terminal = { say: () => undefined, progress: () => undefined, progressDone: () => undefined };
    await expect(fresh.run([at("gathers.csv"), "--out", at("without.csv")], terminal)).rejects.toThrow(
      "npm install @duckdb/node-api",
    );
    vi.doUnmock("@duckdb/node-api");
  });
});
