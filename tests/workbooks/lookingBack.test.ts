import { beforeAll, describe, expect, test } from "vitest";
import type { Cell } from "../../src/cells/cell.ts";
import { dayOf } from "../../src/cells/day.ts";
import type { BookContent } from "../../src/workbooks/footBook/bookContent.ts";
import { flockFootBook } from "../../src/workbooks/footBook/flockFootBook.ts";
import { inventedBook } from "../../src/workbooks/footBook/inventedBook.ts";
import { year } from "../../src/workbooks/inventedFlock/flockYear.ts";
import { sampleSeed } from "../../src/workbooks/inventedFlock/inventedFlock.ts";
import { onDay } from "../../src/workbooks/onDay.ts";
import { workedOut } from "../../src/workbooks/workedOut.ts";
import { sheetCells } from "../samples/sheetCells.ts";

const asOf = dayOf("2026-07-31");
const book = { ...inventedBook(sampleSeed), asOf, saleDate: asOf + 3, eventDate: asOf + 2 };

const isLater = (cell: Cell | undefined): boolean => typeof cell === "number" && cell > asOf;
const upTo = (cell: Cell | undefined): Cell | undefined => (isLater(cell) ? undefined : cell);

/** The book as it was on that day: nothing that was written down later is in it. */
const ended: BookContent = {
  ...book,
  gathers: book.gathers.filter(({ date }) => !isLater(date)),
  cases: book.cases.map((row) => {
    if (isLater(row.seen)) return {};
    const sound = { lookedAgain: upTo(row.lookedAgain), soundOn: upTo(row.soundOn), leftFlock: upTo(row.leftFlock) };
    if (!isLater(row.treated)) return { ...row, ...sound };
    const { treated: _, medicine: __, ml: ___, withdrawalDays: ____, recheckDue: _____, ...untreated } = row;
    return { ...untreated, ...sound };
  }),
};

/** What a reader sees of the lists and figures. */
async function shown(content: BookContent): Promise<ReadonlyMap<string, Cell>> {
  // The clock stands at the end of the year, so that the day is one to look back to.
  const { bytes } = await onDay(year.last, () => workedOut(flockFootBook(content)));
  const sheets = ["Today", "May they go", "Keep apart", "Picture", "Medicine use"];
  return new Map(
    [...sheetCells(bytes)].filter(
      ([address, cell]) =>
        (sheets.includes(address.split("!")[0] ?? "") || /^Gathers![G-L]/.test(address)) &&
        !String(cell).startsWith("Looking back"),
    ),
  );
}

describe("a book with later records in it, worked out for an earlier day", () => {
  let back: ReadonlyMap<string, Cell>;
  let then: ReadonlyMap<string, Cell>;
  beforeAll(async () => {
    back = await shown(book);
    then = await shown(ended);
  }, 600_000);

  test("has later records", () => {
    expect(book.cases.filter(({ seen }) => isLater(seen)).length).toBeGreaterThan(50);
    expect(book.gathers.length - ended.gathers.length).toBeGreaterThan(10);
    expect(back.size).toBeGreaterThan(800);
  });

  test("gives every figure and list that a book gives which ended on that day", () => {
    expect([...back].filter(([address, cell]) => then.get(address) !== cell && typeof cell !== "object")).toEqual([]);
    expect([...then.keys()].filter((address) => !back.has(address))).toEqual([]);
  });

  test("shows one number for the last month in its headline and at the end of its chart", () => {
    const months = Array.from({ length: 12 }, (_, index) => back.get(`Picture!S${index + 5}`));
    expect(months.at(-1)).toBe(back.get("Picture!A4"));
  });
});
