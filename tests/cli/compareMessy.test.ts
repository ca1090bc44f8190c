import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { DuckDBInstance } from "@duckdb/node-api";
import fc from "fast-check";
import { expect, test } from "vitest";
import { caseTableFunction } from "../../functions/animals/caseTable.ts";
import { funnelFunction } from "../../functions/benchmarking/funnel.ts";
import { shrunkPrevalenceFunction } from "../../functions/benchmarking/shrunkPrevalence.ts";
import { flockPrevalenceFunction } from "../../functions/counting/flockPrevalence.ts";
import { prevalenceRangeFunction } from "../../functions/counting/prevalenceRange.ts";
import { recheckDueFunction } from "../../functions/dates/recheckDue.ts";
import { lameWatchFunction } from "../../functions/watching/lameWatch.ts";
import type { Cell, Cells } from "../../src/cells/cell.ts";
import { dayOf, isoText } from "../../src/cells/day.ts";
import { compareCommand } from "../../src/cli/commands/compareCommand.ts";
import type { AnyFunction } from "../../src/definition/defineFunction.ts";
import { evaluate } from "../../src/definition/evaluate.ts";
import type { Argument } from "../../src/reading/readArguments.ts";

// Records as people keep them, through compare and through the functions of the catalogue: what a function can read is
// counted and comes to the same digits, and what it cannot is left out and said in the line of its flock.

const column = (cells: readonly Cell[]): Argument => cells.map((cell) => [cell]);

function answer(definition: AnyFunction, ...given: readonly Argument[]): Cells {
  const outcome = evaluate(definition, given);
  if (!outcome.ok) throw new Error(outcome.message);
  return outcome.cells;
}

/** As a cell of a sheet holds what a csv file has between two commas. */
const cellOf = (text: string): Cell => (text === "" ? null : text);

/** The day that the functions take a text for; undefined where they take it for none. */
function dayIn(text: string): number | undefined {
  const [[next] = []] = answer(recheckDueFunction, column([cellOf(text), "2026-03-14"]), 1);
  return typeof next === "number" ? next - 1 : undefined;
}

/** Whether FLOCKPREV takes the counts of a row, and does not pass over them as a blank row. */
function areCounts(lame: string, seen: string): boolean {
  if (isBlank(lame) && isBlank(seen)) return false;
  const outcome = evaluate(flockPrevalenceFunction, [column([cellOf(lame), 1]), column([cellOf(seen), 100])]);
  return outcome.ok;
}

const flocks = ["Low Field", " low  field", "LOW FIELD", "Hill", "hill\t", "Ash", "Äsh"] as const;
const keys = ["ash", "äsh", "hill", "low field"] as const;
const keyOf = (flock: string): string => flock.trim().replace(/\s+/g, " ").toLowerCase();

const goodDay = fc.integer({ min: dayOf("2025-01-01"), max: dayOf("2026-12-31") }).map(isoText);
const date = fc.oneof(
  { weight: 12, arbitrary: goodDay },
  { weight: 1, arbitrary: goodDay.map((day) => ` ${day} `) },
  {
    weight: 2,
    arbitrary: fc.constantFrom(
      "",
      " ",
      "\u00a0",
      "03/04/2026",
      "2026-02-30",
      "soon",
      "46100",
      "14 Mar 2026",
      "12/2026",
    ),
  },
);
const count = (most: number) =>
  fc.oneof(
    { weight: 12, arbitrary: fc.integer({ min: 0, max: most }).map(String) },
    { weight: 1, arbitrary: fc.constantFrom(" 40 ", "4e1", "40.0", "+12", "", "-3", "2.5", "3,5", "n/a", "1e12", "٣") },
  );
const flock = fc.oneof(
  { weight: 30, arbitrary: fc.constantFrom(...flocks) },
  { weight: 1, arbitrary: fc.constantFrom("", "  ") },
);
const gatherRow = fc.record({
  flock,
  date,
  group: fc.constantFrom("Ewes", "ewes ", "EWES", "ewse", "Lambs", ""),
  seen: count(150),
  lame: count(12),
});
const tag = fc.constantFrom(
  ...["0042", "42", "042 ", "blue 12", "BLUE-12", "1-12", "11-2", "1/12", "", " ", "\u00a0"],
  ...["ZZ 0123456 00007", "zz012345600007", "999012345600007", "0999012345600007", "999 0123456 00007"],
  ...["99901234560000", "040123456789012", "23 lambs", "9.99012E+14", "9990123456000071", "-", "Ünder 7", "0"],
  "a long name of a pet lamb",
);
const caseRow = fc.record({
  flock,
  tag,
  seen: date,
  treated: fc.oneof(date, fc.constant("")),
  group: fc.oneof({ weight: 5, arbitrary: fc.constant("") }, { weight: 1, arbitrary: fc.constant("ewes") }),
});

type GatherRow = typeof gatherRow extends fc.Arbitrary<infer T> ? T : never;
type CaseRow = typeof caseRow extends fc.Arbitrary<infer T> ? T : never;

const csv = (rows: readonly (readonly string[])[]): string =>
  `${rows.map((row) => row.map((cell) => `"${cell}"`).join(",")).join("\n")}\n`;

async function compared(folder: string, by: string): Promise<readonly Readonly<Record<string, unknown>>[]> {
  const out = join(folder, `${by}.parquet`);
  const terminal = { say: () => undefined, progress: () => undefined, progressDone: () => undefined };
  const files = ["gathers.csv", "more gathers.csv", "cases.csv"].map((name) => join(folder, name));
  await compareCommand.run([...files, "--out", out, "--year", "2026", "--by", by], terminal);
  const instance = await DuckDBInstance.create(":memory:");
  const duck = await instance.connect();
  const rows = await (await duck.run(`SELECT * FROM read_parquet('${out}')`)).getRowObjects();
  duck.closeSync();
  instance.closeSync();
  return rows;
}

const isBlank = (text: string): boolean => text.trim() === "";
const inYear = (day: number): boolean => isoText(day).startsWith("2026");
const total = (numbers: readonly number[]): number => numbers.reduce((sum, number) => sum + number, 0);

interface Gather {
  readonly key: string;
  readonly group: string;
  readonly day: number;
  readonly seen: number;
  readonly lame: number;
}

/** Of the gathers in the order of their days: in another order sums differ in their last digit. */
function rangeOf(unordered: readonly Gather[]): readonly [Cell, Cell] {
  const gathers = unordered.toSorted((one, other) => one.day - other.day);
  if (total(gathers.map(({ seen }) => seen)) === 0) return [null, null];
  const [ill, all] = [column(gathers.map(({ lame }) => lame)), column(gathers.map(({ seen }) => seen))];
  const dates = column(gathers.map(({ day }) => day));
  const none = undefined;
  const [[low = null, high = null] = []] = answer(prevalenceRangeFunction, ill, all, none, none, none, none, dates);
  return [low, high];
}

function check(
  lines: readonly Readonly<Record<string, unknown>>[],
  gatherRows: readonly GatherRow[],
  caseRows: readonly CaseRow[],
): void {
  const written = gatherRows.filter(({ date, seen, lame }) => ![date, seen, lame].every(isBlank));
  const read = written.map((row): Gather | undefined => {
    const day = dayIn(row.date);
    if (day === undefined || !areCounts(row.lame, row.seen)) return undefined;
    return { key: keyOf(row.flock), group: keyOf(row.group), day, seen: Number(row.seen), lame: Number(row.lame) };
  });
  const gathers = read.filter((gather) => gather !== undefined);
  const records = caseRows.filter(
    ({ tag, seen, treated, group }) => ![tag, seen, treated].every(isBlank) && !(isBlank(tag) && !isBlank(group)),
  );
  const unnamed = [...written, ...records].filter((row) => isBlank(row.flock)).length;
  const year = gathers.filter(({ day, key }) => inYear(day) && key !== "");
  const sums = keys
    .map((key) => {
      const own = year.filter((gather) => gather.key === key);
      return { key, lame: total(own.map(({ lame }) => lame)), seen: total(own.map(({ seen }) => seen)) };
    })
    .filter(({ seen }) => seen > 0);
  const counts = [
    column(sums.map(({ key }) => key)),
    column(sums.map(({ lame }) => lame)),
    column(sums.map(({ seen }) => seen)),
  ];
  const mixed = sums.some(({ lame }) => lame > 0) && sums.some(({ lame, seen }) => lame < seen);
  const funnel = sums.length > 1 ? answer(funnelFunction, ...counts, undefined, true) : [];
  const [headings = [], ...shrunk] = sums.length > 1 && mixed ? answer(shrunkPrevalenceFunction, ...counts) : [];

  const named = new Set([...gatherRows, ...caseRows].map(({ flock }) => keyOf(flock)).filter((key) => key !== ""));
  expect(lines.map((line) => keyOf(String(line.Flock)))).toEqual(keys.filter((key) => named.has(key)));
  for (const line of lines) {
    const key = keyOf(String(line.Flock));
    const own = gathers.filter((gather) => gather.key === key);
    const here = own.filter(({ day }) => inYear(day));
    const seen = total(here.map((gather) => gather.seen));
    expect(line["Looked at"]).toBe(here.length === 0 ? null : seen);
    expect(line.Lame).toBe(here.length === 0 ? null : total(here.map(({ lame }) => lame)));
    expect([line.Low, line.High]).toEqual(rangeOf(here));
    expect(line["In the funnel"] ?? "").toBe(funnel.find(([name]) => name === key)?.[7] ?? "");
    const steadied = shrunk.find(([name]) => name === key);
    for (const [ours, theirs] of [
      ["Steadied share", "steadied share"],
      ["Steadied low", "low"],
      ["Steadied high", "high"],
      ["Rank", "rank"],
    ] as const)
      expect(line[ours]).toBe(steadied?.[headings.indexOf(theirs)] ?? null);

    const watched = own.filter((gather) => gather.seen > 0);
    if (watched.length > 0) {
      const of = (what: "day" | "lame" | "seen") => column(watched.map((gather) => gather[what]));
      const [, ...rows] = answer(lameWatchFunction, of("day"), of("lame"), of("seen"));
      expect(line.Signals).toBe(rows.filter((row) => row.at(-1) !== "" && inYear(Number(row[0]))).length);
    } else expect(line.Signals).toBe(null);

    const treated = records.filter((record) => keyOf(record.flock) === key);
    const [, ...table] =
      treated.length === 0
        ? []
        : answer(
            caseTableFunction,
            column(treated.map(({ tag }) => cellOf(tag))),
            column(treated.map((record) => cellOf(isBlank(record.seen) ? record.treated : record.seen))),
          );
    const doubted = table.filter(([, number]) => number === "not known").length;
    const begun = table.filter(([, number, first]) => number !== "not known" && inYear(Number(first))).length;
    expect(line.Cases).toBe(treated.length === 0 ? null : begun);

    const lost = written.filter((row, index) => keyOf(row.flock) === key && read[index] === undefined).length;
    const said = String(line["Left out"] ?? "");
    expect(Number(/(\d+) gathers? cannot be read/.exec(said)?.[1] ?? 0)).toBe(lost);
    expect(Number(/(\d+) case records? cannot be read/.exec(said)?.[1] ?? 0)).toBe(doubted);
    expect(Number(/(\d+) records? without a flock/.exec(said)?.[1] ?? 0)).toBe(unnamed);
  }
}

function checkGroups(lines: readonly Readonly<Record<string, unknown>>[], gatherRows: readonly GatherRow[]): void {
  for (const line of lines) {
    const here = gatherRows.flatMap((row): readonly Gather[] => {
      const day = dayIn(row.date);
      if (day === undefined || !inYear(day) || !areCounts(row.lame, row.seen)) return [];
      if (keyOf(row.flock) !== keyOf(String(line.Flock))) return [];
      if ((keyOf(row.group) || "no group") !== keyOf(String(line.Group))) return [];
      return [{ key: "", group: "", day, seen: Number(row.seen), lame: Number(row.lame) }];
    });
    expect(here.length).toBeGreaterThan(0);
    expect(line["Looked at"]).toBe(total(here.map(({ seen }) => seen)));
    expect([line.Low, line.High]).toEqual(rangeOf(here));
  }
  const names = lines.map((line) => keyOf(`${line.Flock}/${line.Group}`));
  expect(new Set(names).size).toBe(names.length);
}

test("messy records come to what the functions say of them, and what they cannot read is said", async () => {
  let compares = 0;
  await fc.assert(
    fc.asyncProperty(
      fc.array(gatherRow, { minLength: 40, maxLength: 160 }),
      fc.array(caseRow, { minLength: 20, maxLength: 160 }),
      async (gatherRows, caseRows) => {
        const folder = mkdtempSync(join(tmpdir(), "soundfold-messy-"));
        try {
          const lines = gatherRows.map(({ flock, date, group, seen, lame }) => [flock, date, group, seen, lame]);
          const half = Math.floor(lines.length / 2);
          const headings = ["Flock", "Date", "Group", "Looked at", "Lame"];
          writeFileSync(join(folder, "gathers.csv"), csv([headings, ...lines.slice(0, half)]));
          writeFileSync(join(folder, "more gathers.csv"), csv([headings, ...lines.slice(half)]));
          writeFileSync(
            join(folder, "cases.csv"),
            csv([
              ["Flock", "Tag", "Seen lame", "Treated", "Group"],
              ...caseRows.map(({ flock, tag, seen, treated, group }) => [flock, tag, seen, treated, group]),
            ]),
          );
          check(await compared(folder, "flock"), gatherRows, caseRows);
          checkGroups(await compared(folder, "group"), gatherRows);
          compares++;
        } finally {
          rmSync(folder, { recursive: true, force: true });
        }
      },
    ),
    { numRuns: 8, endOnFailure: true },
  );
  expect(compares).toBe(8);
}, 240_000);
