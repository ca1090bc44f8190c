import { beforeAll, describe, expect, test } from "vitest";
import type { Cell } from "../../src/cells/cell.ts";
import { dayOf, isoText } from "../../src/cells/day.ts";
import { columnLetters } from "../../src/workbook/address.ts";
import { firstRecord } from "../../src/workbooks/footBook/bookSheets.ts";
import { emptyBook } from "../../src/workbooks/footBook/emptyBook.ts";
import { flockFootBook } from "../../src/workbooks/footBook/flockFootBook.ts";
import { cases as casesTable } from "../../src/workbooks/tables/cases.ts";
import type { RecordOf } from "../../src/workbooks/tables/defineTable.ts";
import { gathers as gathersTable } from "../../src/workbooks/tables/gathers.ts";
import { saleList } from "../../src/workbooks/tables/saleList.ts";
import { workedOut } from "../../src/workbooks/workedOut.ts";
import { sheetCells } from "../samples/sheetCells.ts";

/** The letters of a column that is worked out beside the typed ones. */
const workedLetters = (index: number): string => columnLetters(casesTable.keys.length + index);

const asOf = dayOf("2026-12-31");
const animals = 1250;
const lesions = ["footrot", "scald", "white line abscess", "CODD"] as const;
const withdrawal = 35;

/** As many cases as the table has room for: four of each animal, 85 days apart. */
const cases = Array.from({ length: casesTable.room }, (_, index) => ({
  place: index,
  seen: dayOf("2026-01-01") + Math.floor((index * 340) / casesTable.room),
  tag: `ZZ 0123456 ${String((index % animals) + 1).padStart(5, "0")}`,
  lesion: lesions[index % 4] as string,
  medicine: index % 2 === 0,
  // Every tenth has neither been looked at again nor been found sound.
  settled: index % 10 !== 0,
}));
type Case = (typeof cases)[number];

const typed = ({ seen, tag, lesion, medicine, settled }: Case): RecordOf<typeof casesTable> => ({
  seen,
  treated: seen,
  tag,
  group: "Ewes",
  foot: "LF",
  lesion,
  score: 3,
  treatment: medicine ? "injection" : "spray",
  ...(medicine ? { medicine: "own medicine", ml: 5, withdrawalDays: withdrawal } : { withdrawalDays: 0 }),
  ...(settled ? { lookedAgain: seen + 7, soundOn: seen + 6 } : {}),
});

const saleTags = cases.slice(0, saleList.room).map(({ tag }) => tag);
// The first sure day is the day after the last of the period.
const isHeld = ({ medicine, seen }: Case): boolean => medicine && seen + withdrawal + 1 > asOf;
const held = new Set(cases.filter(isHeld).map(({ tag }) => tag));
const open = cases.filter(({ settled }) => !settled);

describe("a Flock foot book as full as it can be", () => {
  let cells: ReadonlyMap<string, Cell>;
  const listed = (sheet: string, column: string, from: number): readonly Cell[] => {
    const found: Cell[] = [];
    for (let row = from; cells.has(`${sheet}!${column}${row}`); row++)
      found.push(cells.get(`${sheet}!${column}${row}`) as Cell);
    return found;
  };
  const sorted = (tags: Iterable<Cell>): readonly string[] => [...tags].map(String).sort();

  beforeAll(async () => {
    const { bytes, summary } = await workedOut(
      flockFootBook({
        ...emptyBook({ farm: "Full farm", groups: ["Ewes"], made: isoText(asOf) }),
        asOf,
        lameFrom: 2,
        breedingSheep: 1000,
        slaughterLambs: 1200,
        medicines: [
          { medicine: "own medicine", mgPerMl: 100, mgPerKg: 10, withdrawalDays: withdrawal, antibiotic: "yes" },
        ],
        gathers: Array.from({ length: gathersTable.room }, (_, index) => ({
          date: asOf - gathersTable.room + index,
          group: "Ewes",
          lookedAt: 40,
          lame: index % 5,
        })),
        cases: cases.map(typed),
        saleDate: asOf,
        saleTags,
      }),
    );
    expect(summary.left).toEqual([]);
    cells = sheetCells(bytes);
    // Half a minute where nothing else runs.
  }, 600_000);

  test("works every row out", () => {
    for (const { place, seen, medicine } of cases) {
      const row = firstRecord + 1 + place;
      expect(cells.get(`Cases!${workedLetters(0)}${row}`)).toBe(medicine ? seen + withdrawal + 1 : seen);
      expect(cells.get(`Cases!${workedLetters(3)}${row}`)).toBe(Math.floor(place / animals) + 1);
    }
    expect(cells.get("Problems!A3")).toBe(0);
  });

  test("lists every animal that is not clear, due or lame again and again", () => {
    expect(sorted(listed("Today", "A", 8))).toEqual(sorted(held));
    // Once each: whoever treated an animal again had looked at it.
    expect(sorted(listed("Today", "K", 8))).toEqual(sorted(new Set(open.map(({ tag }) => tag))));
    expect(sorted(listed("Today", "P", 8))).toEqual(sorted(new Set(cases.map(({ tag }) => tag))));
    expect(new Set(listed("Today", "Q", 8))).toEqual(new Set([4]));
    expect(sorted(listed("Keep apart", "A", 8))).toEqual(sorted(new Set(open.map(({ tag }) => tag))));
  });

  test("checks every tag of the sale", () => {
    const words = listed("May they go", "E", 8);
    expect(words).toEqual(saleTags.map((tag) => (held.has(tag) ? "hold" : "clear")));
    expect(held.size).toBeGreaterThan(0);
  });

  test("counts every case and every course", () => {
    expect(listed("Picture", "I", 46)).toEqual(lesions.map(() => casesTable.room / lesions.length));
    const newCases = Array.from({ length: 12 }, (_, month) => cells.get(`Picture!X${month + 5}`));
    const inMonth = (month: number): number =>
      cases.filter(({ seen }) => Number(isoText(seen).slice(5, 7)) === month).length;
    expect(newCases).toEqual(newCases.map((_, month) => inMonth(month + 1)));
    const courses = cases.filter(({ medicine }) => medicine).length;
    expect(cells.get("Medicine use!B8")).toBe(courses);
    expect(cells.get("Medicine use!D8")).toBe(courses * 5 * 100);
  });
});
