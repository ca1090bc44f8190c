import { readFileSync } from "node:fs";
import ExcelJS from "exceljs";
import { describe, expect, test } from "vitest";
import { readFootBook } from "../../src/workbooks/collate/readFootBook.ts";
import { inventedBook } from "../../src/workbooks/footBook/inventedBook.ts";
import { sampleSeed } from "../../src/workbooks/inventedFlock/inventedFlock.ts";
import { type Changes, inventBook, makeFootBook, mgOf } from "./makeFootBook.ts";

const book = inventBook(7, 40);
const of2026 = book.gathers.slice(12);

/** As a program leaves it that reads all it knows and writes the rest anew. */
async function savedAgain(bytes: Uint8Array): Promise<Uint8Array> {
  const workbook = new ExcelJS.Workbook();
  await workbook.xlsx.load(bytes as unknown as ExcelJS.Buffer);
  return new Uint8Array(await workbook.xlsx.writeBuffer());
}

const total = (numbers: readonly number[]): number => numbers.reduce((sum, number) => sum + number, 0);
const expected = {
  gathers: 12,
  lookedAt: total(of2026.map(({ seen }) => seen)),
  lame: total(of2026.map(({ lame }) => lame)),
  cases: 40,
  antibioticMg: expect.closeTo(mgOf(book), 6),
  coursesWithoutMg: 0,
  days: new Map(of2026.map(({ day, seen, lame }) => [day, { lookedAt: seen, lame }])),
};

describe("a foot book is read whatever was changed, as long as the headings stand", () => {
  const changes: Readonly<Record<string, Changes>> = {
    "as it is": {},
    "sheets and tables renamed": { gathersSheet: "Days in the pens", tableNames: (name) => `My${name}` },
    "columns turned round, one added, the table moved": { turned: true },
    "lists saved as plain cells": { plain: true },
    "a sheet of the farm's own in front, with another list": { ownSheet: true },
    "days counted from 1904": { from1904: true },
    "capitals and spaces in the headings": { heading: (text) => ` ${text.toUpperCase()} ` },
  };
  test.each(Object.entries(changes))("%s", async (_, change) => {
    const read = readFootBook(await makeFootBook(book, change));
    expect(read.years.get(2026)).toEqual(expected);
    expect(read.years.get(2025)?.lookedAt).toBe(total(book.gathers.slice(0, 12).map(({ seen }) => seen)));
    expect(read).toMatchObject({
      flock: "Farm 7",
      target: 0.03,
      breedingSheep: 300,
      slaughterLambs: 400,
      toMend: 0,
      leftOut: [],
    });
  });

  test.each(Object.entries(changes))("%s, and saved again by a library", async (_, change) => {
    const bytes = await makeFootBook(book, change);
    expect(readFootBook(await savedAgain(bytes))).toEqual(readFootBook(bytes));
  });
});

test("a gather that cannot be counted is left out and named by its row", async () => {
  const more = readFootBook(await makeFootBook(book, { lastGather: [46300, "Ewes", 20, 21, null] }));
  expect(more.years.get(2026)).toEqual(expected);
  expect(more.leftOut).toEqual(["Gathers row 29: 21 lame of 20 looked at"]);
  expect(more.toMend).toBe(1);
  const noDate = readFootBook(await makeFootBook(book, { lastGather: ["12/3", "Ewes", 20, 1, null] }));
  expect(noDate.leftOut).toEqual(['Gathers row 29: "12/3" is not a date']);
  const noCount = readFootBook(await makeFootBook(book, { lastGather: [46300, "Ewes", 20, null, null] }));
  expect(noCount.leftOut).toEqual(["Gathers row 29: looked at and lame must both be whole numbers"]);
});

test("a book without the headings is refused with what is missing", async () => {
  const bytes = await makeFootBook(book, { heading: (text) => (text === "Lame" ? "Limping" : text) });
  expect(() => readFootBook(bytes)).toThrow("No table of gathers in it: none has the headings Date, Looked at, Lame.");
});

test("the filled Flock foot book gives the counts of the flock it was filled from", () => {
  const read = readFootBook(readFileSync("samples/flock-foot-book.xlsx"));
  const { gathers, breedingSheep, slaughterLambs } = inventedBook(sampleSeed);
  const sums = (from: number, until: number, key: "lookedAt" | "lame") =>
    total(gathers.filter(({ date }) => Number(date) >= from && Number(date) < until).map((row) => Number(row[key])));
  // 2025-01-01, 2026-01-01 and 2027-01-01 as serial days.
  expect(read.years.get(2025)).toMatchObject({
    lookedAt: sums(45658, 46023, "lookedAt"),
    lame: sums(45658, 46023, "lame"),
  });
  expect(read.years.get(2026)).toMatchObject({
    lookedAt: sums(46023, 46388, "lookedAt"),
    lame: sums(46023, 46388, "lame"),
  });
  expect(read).toMatchObject({ flock: "Invented flock", target: 0.05, breedingSheep, slaughterLambs, leftOut: [] });
  // One slip of each of four kinds stands in the book; LESIONNAME, dates and numbers kept as text, days missing.
  expect(read.toMend).toBe(4);
});
