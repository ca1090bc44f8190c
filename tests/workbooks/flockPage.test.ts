import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { dayOf } from "../../src/cells/day.ts";
import { tagKey } from "../../src/core/words/tagKey.ts";
import { type CaseRow, careByYear } from "../../src/workbooks/collate/careByYear.ts";
import { collateBooks } from "../../src/workbooks/collate/collateBooks.ts";
import type { FlockRecord } from "../../src/workbooks/collate/flockRecord.ts";
import { readCases } from "../../src/workbooks/collate/readCases.ts";
import { readFootBook } from "../../src/workbooks/collate/readFootBook.ts";
import { flockPage } from "../../src/workbooks/flockPage/flockPage.ts";
import type { FlockPageContent } from "../../src/workbooks/flockPage/flockPageContent.ts";
import { flockPages } from "../../src/workbooks/flockPage/flockPages.ts";
import { authorWorkbook } from "../../src/workbooks/writing/authorWorkbook.ts";
import { inventBook, makeFootBook } from "./makeFootBook.ts";
import { faultsOf } from "./vendorValidator.ts";

const folder = mkdtempSync(join(tmpdir(), "soundfold-page-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const asOf = dayOf("2026-03-31");
const row = (number: number, seen: string, more: Partial<CaseRow> = {}): CaseRow => ({
  tag: { key: tagKey(`ZZ ${number}`), shown: `${number}` },
  day: dayOf(seen),
  seen: dayOf(seen),
  treated: undefined,
  soundOn: undefined,
  leftOn: undefined,
  lesion: undefined,
  ...more,
});

test("waits are counted by case, and a wait that is not known is left out and never 0", () => {
  const care = careByYear(
    [
      row(1, "2026-01-05", { treated: dayOf("2026-01-08") }),
      // A second treatment of the same case is no second wait.
      row(1, "2026-01-12", { treated: dayOf("2026-01-12") }),
      row(2, "2026-01-05", { treated: dayOf("2026-01-09") }),
      row(3, "2026-02-01"),
      // Seen two days before the book ends: not decided.
      row(4, "2026-03-29", { treated: dayOf("2026-03-29") }),
      row(5, "2026-02-02", { seen: undefined, treated: dayOf("2026-02-02") }),
      row(6, "2026-02-02", { treated: "unread" }),
      row(7, "2026-02-09", { treated: dayOf("2026-02-02") }),
      row(8, "2025-12-30", { treated: dayOf("2025-12-30") }),
    ],
    14,
    asOf,
  );
  // 1 of 3 in time; Wilson 1927 for 1 of 3: 0.0615 to 0.7923 (R 4.2, prop.test(1, 3, correct = FALSE)$conf.int).
  expect(care.get(2026)?.inTime).toMatchObject({ value: 1 / 3, of: 3, leftOut: 3 });
  expect(care.get(2026)?.inTime.low).toBeCloseTo(0.0615, 4);
  expect(care.get(2026)?.inTime.high).toBeCloseTo(0.7923, 4);
  expect(care.get(2025)?.inTime).toMatchObject({ value: 1, of: 1, leftOut: 0 });
});

test("sound counts those still lame for as long as they were watched", () => {
  const treated = dayOf("2026-03-01");
  const watched = (number: number, more: Partial<CaseRow>) => row(number, "2026-03-01", { treated, ...more });
  const rows = [
    watched(1, { soundOn: treated + 3 }),
    watched(2, { soundOn: treated + 10, lesion: "footrot" }),
    // Treated 10 days before the book ends: watched so long and not longer.
    row(3, "2026-03-21", { treated: dayOf("2026-03-21"), lesion: "foot rot" }),
    watched(4, { lesion: "scald" }),
    watched(5, { soundOn: "unread" }),
    row(6, "2026-03-01", { lesion: "scald?" }),
  ];
  const care = careByYear(rows, 14, asOf).get(2026);
  // By hand (Kaplan & Meier 1958): still lame 3/4 after day 3, and 3/4 · 2/3 after day 10.
  expect(care?.sound).toMatchObject({ value: expect.closeTo(1 / 2, 12), of: 4, leftOut: 1 });
  expect(care?.lesions.map(({ name, cases }) => [name, cases])).toEqual([
    ["footrot", 2],
    ["interdigital dermatitis", 1],
    ["interdigital dermatitis, not sure", 1],
  ]);
  expect(care?.withoutLesion).toBe(2);
  expect(careByYear(rows, 14, undefined).get(2026)?.sound.value).toBeUndefined();
});

test("a book without any day of treatment, or of soundness, gives no share of 0", () => {
  const untreated = careByYear([row(1, "2026-01-05"), row(2, "2026-01-06")], 14, asOf).get(2026);
  expect(untreated?.inTime.value).toBeUndefined();
  expect(untreated?.inTime.words).toBe("no treatment has a day, so there may be none, or none written down");
  const treated = dayOf("2026-01-06");
  const unwatched = careByYear([row(1, "2026-01-05", { treated }), row(2, "2026-01-06", { treated })], 14, asOf);
  expect(unwatched.get(2026)?.inTime.value).toBe(1);
  expect(unwatched.get(2026)?.sound.value).toBeUndefined();
});

test("a course without a day that can be read is counted as such, and its row as in no case", () => {
  const found = {
    sheet: "Cases",
    headings: ["Seen lame", "Treated", "Tag", "Medicine", "Dose ml"],
    rows: [
      { sheetRow: 5, cells: [null, "soon", "ZZ 1", "Medicine A", 5] },
      { sheetRow: 6, cells: [dayOf("2026-02-01"), null, "ZZ 2", "Medicine A", 5] },
    ],
    below: 0,
  };
  const { coursesWithoutDay, courses, inNoCase, begun } = readCases(found, undefined, {
    asOf,
    dayOffset: 0,
    gapDays: 14,
  });
  expect({ coursesWithoutDay, courses: courses.length, inNoCase, begun: begun.length }).toEqual({
    coursesWithoutDay: 1,
    courses: 1,
    inNoCase: 1,
    begun: 1,
  });
});

const record = (lame: number, more: Partial<FlockRecord> = {}): FlockRecord => ({
  flock: undefined,
  target: undefined,
  breedingSheep: 300,
  slaughterLambs: 400,
  asOf,
  years: new Map([[2026, { gathers: 3, lookedAt: 200, lame, cases: 20, antibioticMg: 31_500, coursesWithoutMg: 0 }]]),
  care: new Map(),
  inNoCase: 0,
  coursesWithoutDay: 0,
  records: 20,
  toMend: 0,
  leftOut: [],
  latest: 46_000,
  ...more,
});

function pagesOf(...records: readonly FlockRecord[]): readonly FlockPageContent[] {
  const read = records.map((one, index) => ({ file: `${index}.xlsx`, read: { ...one, flock: `Fold ${index}` } }));
  const collated = collateBooks(read, { year: 2026, letters: false, made: "2026-10-31" });
  if (!collated) throw new Error("nothing was collated");
  return flockPages(collated);
}

const lineOf = ({ standing, done }: FlockPageContent | undefined = pagesOf()[0] as never, label: string) =>
  [...standing, ...done].find((line) => line.label.startsWith(label));

test("what cannot be counted says why in words, and is never 0", () => {
  const noMg = new Map([
    [2026, { gathers: 3, lookedAt: 200, lame: 3, cases: 0, antibioticMg: undefined, coursesWithoutMg: 2 }],
  ]);
  const unwrittenYear = new Map([
    [2026, { gathers: 3, lookedAt: 200, lame: 3, cases: 0, antibioticMg: 0, coursesWithoutMg: 0 }],
  ]);
  const [counted, undated, unmeasured, unsized, unwritten] = pagesOf(
    record(4),
    record(5, { coursesWithoutDay: 12, inNoCase: 12 }),
    record(6, { years: noMg }),
    record(7, {
      breedingSheep: undefined,
      slaughterLambs: undefined,
      leftOut: ["Gathers row 9: a blank is not a date"],
    }),
    record(8, { years: unwrittenYear }),
  );
  // 300 breeding sheep of 75 kg and 400 lambs of 20 kg (EMA 2011).
  expect(lineOf(counted, "Antibiotics")?.value).toBeCloseTo(31_500 / 30_500, 12);
  // 20 cases in 90 of 365 days among 300 sheep.
  expect(lineOf(counted, "New cases")?.value).toBeCloseTo((20 / 300) * 100 * (365 / 90), 9);
  const words = (page: FlockPageContent | undefined, label: string) => {
    const line = lineOf(page, label);
    expect([line?.value, line?.low, line?.high]).toEqual([undefined, undefined, undefined]);
    return line?.words;
  };
  expect(words(undated, "Antibiotics")).toBe("not counted: 12 treatments without a day");
  expect(words(undated, "Left out")).toBe("12 rows of Cases without a tag or a day that can be read");
  expect(words(unmeasured, "Antibiotics")).toBe(
    "not counted: 2 treatments without ml, or with a medicine without mg per ml",
  );
  expect(words(unmeasured, "New cases")).toMatch(/^not counted: no case is recorded/);
  expect(words(unsized, "Antibiotics")).toBe(
    "not counted: breeding sheep are missing in the settings; lambs sold are missing in the settings",
  );
  expect(words(unsized, "Left out")).toBe("Gathers row 9: a blank is not a date");
  for (const label of ["Antibiotics", "New cases"])
    expect(words(unwritten, label)).toBe(
      "not counted: no case is recorded in the year, which may be none or not written down",
    );
  expect(words(counted, "Treated within")).toBe("not counted: no case is recorded in the year");
});

test("a target of 5 where 5 % was meant, and half a sheep, are said and not reckoned with", () => {
  const [page] = pagesOf(record(60, { target: 5, breedingSheep: 300.5 }), record(5));
  expect(lineOf(page, "Against the target")?.words).toBe(
    "not compared: its own target is 5, and no share between 0 and 100 %",
  );
  expect(lineOf(page, "New cases")?.words).toBe("not counted: breeding sheep in the settings are no whole number");
  expect(lineOf(page, "Antibiotics")?.words).toBe("not counted: breeding sheep in the settings are no whole number");
});

test("one flock alone has a page without a comparison", () => {
  const [page] = pagesOf(record(4));
  expect(page?.ranked).toEqual([]);
  expect(lineOf(page, "Share lame")?.value).toBe(0.02);
  expect(lineOf(page, "Steadied share")?.words).toMatch(/^not compared: .*one flock alone cannot be compared/);
});

test("the page of the invented foot book and of a name that needs care are sound files", async () => {
  const read = [
    { file: "own.xlsx", read: readFootBook(readFileSync("samples/flock-foot-book.xlsx")) },
    ...(await Promise.all(
      [1, 2, 3].map(async (seed) => ({
        file: `${seed}.xlsx`,
        read: readFootBook(await makeFootBook(inventBook(seed, 20), { farm: `O'Hara & "Sons" <hill> ${seed}` })),
      })),
    )),
  ];
  const collated = collateBooks(read, { year: 2026, letters: true, made: "2026-10-31" });
  if (!collated) throw new Error("nothing was collated");
  for (const page of flockPages(collated)) {
    const file = join(folder, "page.xlsx");
    writeFileSync(file, await authorWorkbook(flockPage(page)));
    expect(faultsOf(file)).toEqual([]);
  }
}, 120_000);
