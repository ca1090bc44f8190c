import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { days1904, firstDay, lastDay } from "../../src/cells/day.ts";
import { day, done, moment } from "../../src/reading/days.ts";
import { type CellKind, Refusal } from "../../src/reading/kind.ts";
import {
  anyNumber,
  between,
  confidence,
  count,
  countFrom,
  daysBetween,
  innerShare,
  nonNegative,
  positive,
  share,
  wholeDays,
} from "../../src/reading/numbers.ts";
import { gappedDoubtColumn } from "../../src/reading/parameter.ts";
import { readArguments } from "../../src/reading/readArguments.ts";

const kinds: Readonly<Record<string, CellKind<unknown>>> = {
  anyNumber: anyNumber(),
  between: between(0.5, 60, "ml"),
  confidence,
  count: count(),
  countFrom: countFrom(2),
  day,
  daysBetween: daysBetween(1, 365),
  done,
  innerShare,
  moment,
  nonNegative: nonNegative("minutes"),
  positive: positive("ml"),
  share,
  wholeDays,
};

// About the ends of every kind, and what is no whole number or none at all.
const ends = [0, 1, 2, 60, 365, 36_525, firstDay, lastDay, firstDay - days1904, lastDay - days1904, 1e9, 1e15, 2 ** 53];
const number = fc.oneof(
  fc.tuple(fc.constantFrom(...ends), fc.integer({ min: -2, max: 2 })).map(([end, off]) => end + off),
  fc.tuple(fc.constantFrom(...ends), fc.constantFrom(-1, 1)).map(([end, sign]) => sign * (end + 0.5)),
  fc.integer(),
  fc.double(),
  fc.constant(-0),
);

describe("a number in a column", () => {
  it.each(Object.entries(kinds))(
    "%s is read as it is in a cell of its own, or refused in the same words",
    (_, kind) => {
      fc.assert(
        fc.property(
          fc.array(number, { minLength: 1, maxLength: 8 }),
          fc.constantFrom(0, days1904),
          (cells, dayOffset) => {
            const alone = cells.map((cell) => aloneRead(kind, cell, dayOffset));
            // Beside a column of records, so that a blank row is kept.
            const { values } = readArguments(
              { beside: gappedDoubtColumn(count(), "records"), column: gappedDoubtColumn(kind, "the kind") },
              [cells.map(() => [1]), cells.map((cell) => [cell])],
              { dayOffset },
            );
            expect((values.column as unknown[]).map(refusedOr)).toEqual(alone);
          },
        ),
        { numRuns: 300 },
      );
    },
  );
});

function aloneRead(kind: CellKind<unknown>, cell: number, dayOffset: number): unknown {
  if (kind.isBlank(cell)) return undefined;
  try {
    return kind.read(cell, { dayOffset });
  } catch (error) {
    if (error instanceof Refusal) return error.fault;
    throw error;
  }
}

const refusedOr = (value: unknown): unknown =>
  typeof value === "object" && value !== null && "fault" in value ? value.fault : value;
