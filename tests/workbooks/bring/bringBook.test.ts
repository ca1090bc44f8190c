import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { lookInto } from "../../../src/workbook/lookInto.ts";
import { type BringOptions, bringRecords } from "../../../src/workbooks/bring/bringRecords.ts";
import { flockFootBook } from "../../../src/workbooks/footBook/flockFootBook.ts";
import { authorWorkbook } from "../../../src/workbooks/writing/authorWorkbook.ts";
import { expectNothingDropped } from "./nothingDropped.ts";

const plain: BringOptions = {
  matches: new Map(),
  order: undefined,
  from: undefined,
  farm: undefined,
  made: "2026-11-26",
};
/** The book as it was before books knew their version: a file of an earlier commit of this project. */
const bookOfBefore = (): Uint8Array | undefined => {
  try {
    return execFileSync("git", ["show", "09199a7:samples/flock-foot-book.xlsx"], {
      maxBuffer: 100_000_000,
      stdio: ["ignore", "pipe", "ignore"],
    });
  } catch {
    // A copy of the project without its history.
    return undefined;
  }
};

describe("bringing an older foot book", () => {
  it("brings every case and gather of a book of before, with its settings and medicines", async () => {
    const old = bookOfBefore() ?? readFileSync("samples/flock-foot-book.xlsx");
    const brought = bringRecords([{ file: "old.xlsx", bytes: old }], plain);
    expectNothingDropped(brought);
    expect(brought.leftBehind).toEqual([]);
    const tables = lookInto(old).sheets.flatMap((sheet) => sheet.tables.map((table) => ({ sheet, table })));
    const filled = (name: string): number => {
      const { sheet, table } = tables.find((found) => found.table.name === name) as (typeof tables)[number];
      const { top, left, bottom, right } = table.area;
      return sheet
        .rows()
        .filter(
          ({ row, cells }) =>
            row > top &&
            row <= bottom &&
            cells.some(({ column, value }) => column >= left && column <= right && value !== null && value !== ""),
        ).length;
    };
    expect(filled("Cases")).toBeGreaterThan(100);
    expect(brought.places.map(({ into, rowsIn, rowsOut }) => [into, rowsIn, rowsOut])).toEqual([
      ["Gathers", filled("Gathers"), filled("Gathers")],
      ["Cases", filled("Cases"), filled("Cases")],
    ]);
    expect(brought.content).toMatchObject({ farm: "Invented flock", target: 0.05, lameFrom: 2 });
    expect(brought.content.medicines).toHaveLength(2);
    expect(brought.content.medicines[0]).toMatchObject({ medicine: "medicine A", mgPerMl: 200, withdrawalDays: 35 });
    expect(brought.notes.join()).toContain("as_of was fixed");
    const bytes = await authorWorkbook(flockFootBook(brought.content));
    // The new book says its version, and brings the same again.
    const again = bringRecords([{ file: "new.xlsx", bytes }], plain);
    expect(again.content).toEqual(brought.content);
    expect(again.leftBehind).toEqual([]);
  });

  it("refuses a book of a later version", async () => {
    const { content } = bringRecords(
      [{ file: "r.csv", bytes: new TextEncoder().encode("Tag,Treated\n042,2026-03-14\n") }],
      plain,
    );
    const later = { ...content, settings: new Map([["book_version", 99]]) };
    const bytes = await authorWorkbook(flockFootBook(later));
    expect(() => bringRecords([{ file: "later.xlsx", bytes }], plain)).toThrow(/is a foot book of version 99/);
  });
});
