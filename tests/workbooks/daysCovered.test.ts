import { expect, test } from "vitest";
import { dayOf, showDay } from "../../src/cells/day.ts";
import { daysCovered } from "../../src/workbooks/collate/daysCovered.ts";
import { flockDone } from "../../src/workbooks/collate/flockDone.ts";
import { readFootBook } from "../../src/workbooks/collate/readFootBook.ts";
import { inventBook, makeFootBook } from "./makeFootBook.ts";

test("a book begun in the course of a year covers the days from its first record, any other the whole year", () => {
  const ends = dayOf("2026-10-31");
  // 175 days from 10 May to 31 October, both counted (GNU date: (date -d 2026-10-31 +%s - date -d 2026-05-10 +%s) / 86400 + 1).
  expect(daysCovered(2026, dayOf("2026-05-10"), ends)).toMatchObject({ days: 175, isBegunInYear: true });
  expect(daysCovered(2026, dayOf("2025-05-10"), ends)).toMatchObject({ days: 304, isBegunInYear: false });
  expect(daysCovered(2026, dayOf("2026-01-01"), dayOf("2027-03-01"))).toMatchObject({
    days: 365,
    isBegunInYear: false,
  });
  expect(daysCovered(2026, undefined, ends).days).toBe(304);
  // A record after the year says nothing of it.
  expect(daysCovered(2025, dayOf("2026-05-10"), ends).days).toBe(365);
  expect(daysCovered(2027, dayOf("2026-05-10"), ends).days).toBe(0);
});

test("the first record of a book is the earliest of its gathers and cases", async () => {
  const book = inventBook(7, 20);
  const first = Math.min(...book.gathers.map(({ day }) => day), ...book.cases.map(({ day }) => day));
  expect(readFootBook(await makeFootBook(book)).earliest).toBe(first);
  const late = { ...book, gathers: book.gathers.filter(({ day }) => day >= dayOf("2026-11-01")) };
  expect(readFootBook(await makeFootBook(late)).earliest).toBe(Math.min(...book.cases.map(({ day }) => day)));
});

test("new cases of a book begun in the course of a year are counted over the days that it covers, and it says so", async () => {
  const book = inventBook(7, 20);
  const day = dayOf("2026-07-01");
  const late = {
    ...book,
    gathers: book.gathers.filter(({ day: on }) => on >= day),
    cases: book.cases.filter(({ day: on }) => on >= day),
  };
  const asOf = dayOf("2026-12-31");
  const record = { ...readFootBook(await makeFootBook(late)), asOf };
  const first = Math.min(...late.gathers.map(({ day: on }) => on), ...late.cases.map(({ day: on }) => on));
  const { value, words } = flockDone(record, 2026).newCases;
  // Cases for 100 sheep in a year of 365 days, by hand.
  expect(value).toBeCloseTo((late.cases.length / (300 * (asOf - first + 1))) * 100 * 365, 9);
  expect(words).toContain(`from the book's first record on ${showDay(first)}`);
});
