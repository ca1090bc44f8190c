import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Cell } from "../../../src/cells/cell.ts";
import { days1904, firstDay, lastDay } from "../../../src/cells/day.ts";
import { fieldReader } from "../../../src/core/records/fieldChecks.ts";
import { readField, readInSteps } from "../../../src/core/records/readField.ts";
import { recordFields } from "../../../src/core/records/recordFields.ts";

// About the ends of every field, and what is no whole number or no number at all.
const ends = [0, 1, 6, 60, 200, 365, 100_000, 46_000, firstDay, lastDay, firstDay - days1904, lastDay - days1904];
const cell: fc.Arbitrary<Cell> = fc.oneof(
  fc.tuple(fc.constantFrom(...ends), fc.integer({ min: -2, max: 2 })).map(([end, off]) => end + off),
  fc.tuple(fc.constantFrom(...ends), fc.constantFrom(-1, 1)).map(([end, sign]) => sign * (end + 0.5)),
  fc.constantFrom(-0, Number.NaN, null, "", "12", " 46000 ", "scald", "LF", "2026-03-14", true),
  fc.constant({ error: "#N/A" } as const),
);

describe("a column of a record", () => {
  it.each(recordFields)("%s is read as each of its cells is by itself, in steps of any rows", (field) => {
    fc.assert(
      fc.property(
        fc.array(cell, { minLength: 1, maxLength: 12 }),
        fc.constantFrom(undefined, 46_000),
        fc.constantFrom(0, days1904),
        fc.integer({ min: 1, max: 12 }),
        (cells, asOf, dayOffset, step) => {
          const rows = cells.map((one) => ["another column", one]);
          const { column, read } = readField(field, 1, rows.length, { asOf, dayOffset });
          for (let from = 0; from < rows.length; from += step) read(rows, from, Math.min(from + step, rows.length));
          const alone = cells.map((one) => fieldReader(field, { asOf, dayOffset })(one));
          expect(column.values).toEqual(alone.map(({ value }) => value));
          expect([...column.faults]).toEqual(
            alone.flatMap(({ fault }, row) => (fault === undefined ? [] : [[row, fault]])),
          );
        },
      ),
      { numRuns: 200 },
    );
  });

  it("is read to its end however many rows there are", () => {
    const rows = Array.from({ length: 1234 }, (_, row) => [row % 7, 46_000 + row]);
    const options = { asOf: undefined, dayOffset: 0 };
    const [score, treated] = [
      readField("score", 0, rows.length, options),
      readField("treated", 1, rows.length, options),
    ];
    readInSteps(rows, [score, treated]);
    expect(score.column.values).toEqual(rows.map(([one]) => one));
    expect(treated.column.values).toEqual(rows.map(([, other]) => other));
  });
});
