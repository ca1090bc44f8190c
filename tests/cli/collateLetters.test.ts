import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Collated, collateBooks, type ReadBook } from "../../src/workbooks/collate/collateBooks.ts";
import type { FlockRecord, YearRecord } from "../../src/workbooks/collate/flockRecord.ts";

const year = 2026;

const inYear = (lame: number, more: Partial<YearRecord> = {}): YearRecord => ({
  gathers: 12,
  lookedAt: 100,
  lame,
  cases: lame,
  antibioticMg: 0,
  coursesWithoutMg: 0,
  ...more,
});

const record = (now: YearRecord | undefined, more: Partial<FlockRecord> = {}): FlockRecord => ({
  flock: undefined,
  target: undefined,
  breedingSheep: 300,
  slaughterLambs: 400,
  years: new Map(now ? [[year, now]] : [[year - 1, inYear(2)]]),
  asOf: 46_000,
  care: new Map(),
  inNoCase: 0,
  coursesWithoutDay: 0,
  records: 20,
  toMend: 0,
  leftOut: [],
  latest: 46_000,
  ...more,
});

// Flocks of one share, some the same in every figure of the year, and books that cannot be used.
const reads: readonly ReadBook["read"][] = [
  record(inYear(9)),
  record(inYear(0)),
  record(inYear(0), { breedingSheep: undefined }),
  record(inYear(0), { records: 3 }),
  record(inYear(0), { records: 3, toMend: 2, leftOut: ["Gathers row 3: a blank is not a date"] }),
  record(inYear(0, { lookedAt: 50 })),
  record(inYear(4, { lookedAt: 400, antibioticMg: undefined })),
  record(inYear(1, { cases: 7 })),
  record(inYear(5)),
  record(undefined, { records: 7 }),
  record(undefined, { records: 40, toMend: 1 }),
  record(undefined, { records: 7, toMend: 3 }),
  { reason: "It is no .xlsx workbook." },
  { reason: "The file is damaged or cut short: its contents cannot be unpacked." },
];

/** The books under file names in this order, each file telling of its flock or holding no name of it. */
function collated(order: readonly number[], named: boolean): Collated {
  const books = order.map((index, position): ReadBook => {
    const read = reads[index] as ReadBook["read"];
    const flock = named ? `Farm ${String(position).padStart(2, "0")}` : undefined;
    return { file: `${String(position).padStart(2, "0")}.xlsx`, read: "reason" in read ? read : { ...read, flock } };
  });
  const made = collateBooks(books, { year, letters: true, made: "2026-10-31" });
  if (!made) throw new Error("no book can be used");
  return made;
}

const places = reads.map((_, index) => index);

describe("collate --letters", () => {
  test.each([true, false])(
    "makes the same comparison whatever the files and flocks are called (flocks named: %s)",
    (named) => {
      const { content } = collated(places, named);
      fc.assert(
        fc.property(fc.shuffledSubarray(places, { minLength: places.length }), (order) => {
          expect(collated(order, named).content).toEqual(content);
        }),
      );
    },
  );

  test("lists the used books by their letters, and the others after them", () => {
    const { books, flocks } = collated(places, true).content;
    expect(books.map(({ flock }) => flock)).toEqual([..."ABCDEFGHI", ...new Array(5).fill(undefined)]);
    expect(flocks.map(({ flock }) => flock)).toEqual([..."ABCDEFGHI"]);
    expect(books.map(({ used }) => used)).toEqual([...new Array(9).fill(true), ...new Array(5).fill(false)]);
    expect(books.slice(9).map(({ records, toMend }) => [records, toMend])).toEqual([
      [undefined, undefined],
      [undefined, undefined],
      [7, 0],
      [7, 3],
      [40, 1],
    ]);
  });

  test("still says by the files' names which letter is which, and what was not used", () => {
    const { key, books } = collated(places, true);
    expect(key.map(({ letter }) => letter)).toEqual([..."ABCDEFGHI"]);
    expect(key.at(-1)).toEqual({ letter: "I", flock: "Farm 00", file: "00.xlsx" });
    expect(books.map(({ file }) => file)).toEqual(places.map((index) => `${String(index).padStart(2, "0")}.xlsx`));
  });

  test("of two books of one flock the unused one gives nothing away either", () => {
    const twins = (first: string, second: string) =>
      collateBooks(
        [
          { file: first, read: record(inYear(3), { flock: "Farm", latest: 46_000, records: 8 }) },
          { file: second, read: record(inYear(2), { flock: "Farm", latest: 46_100, records: 9 }) },
          { file: "m.xlsx", read: record(inYear(5), { flock: "Other" }) },
        ].sort((one, other) => (one.file < other.file ? -1 : 1)),
        { year, letters: true, made: "2026-10-31" },
      )?.content;
    expect(twins("a.xlsx", "z.xlsx")).toEqual(twins("z.xlsx", "a.xlsx"));
  });
});
