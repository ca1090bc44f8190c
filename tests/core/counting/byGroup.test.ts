import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { spreadWords } from "../../../src/core/counting/countedLooks.ts";
import { type GroupPrevalence, prevalenceByGroup } from "../../../src/core/counting/prevalenceByGroup.ts";
import { prevalenceRange, type RangeChoice } from "../../../src/core/counting/prevalenceRange.ts";
import { tallyByName } from "../../../src/core/counting/tallyByName.ts";

interface Row {
  readonly name: string;
  readonly lame: number;
  readonly seen: number;
  readonly day: number;
}

const row: fc.Arbitrary<Row> = fc
  .record({
    // Spellings of three groups.
    name: fc.constantFrom("Ewes", "ewes ", " EWES", "Store  lambs", "store lambs", "rams"),
    seen: fc.oneof(fc.constant(0), fc.integer({ min: 1, max: 300 })),
    part: fc.double({ min: 0, max: 1, noNaN: true }),
    day: fc.integer({ min: 46_000, max: 46_004 }),
  })
  .map(({ part, ...given }) => ({ ...given, lame: Math.floor(part * given.seen) }));
const rows = fc.array(row, { minLength: 1, maxLength: 40 }).filter((some) => some.some(({ seen }) => seen > 0));

const column = <K extends keyof Row>(some: readonly Row[], name: K): readonly Row[K][] => some.map((one) => one[name]);

/** Two names are one when nothing but capitals and white space tells them apart: the rule as the page has it. */
const isSame = (one: string, other: string): boolean => {
  const words = (name: string): string =>
    name
      .split(" ")
      .filter((word) => word !== "")
      .join(" ")
      .toUpperCase();
  return words(one) === words(other);
};

/** Slow and obvious: the rows of each name are picked out, in order of its first row. */
function parted(some: readonly Row[]): readonly (readonly Row[])[] {
  const firsts = some.filter(({ name }, at) => some.findIndex((other) => isSame(other.name, name)) === at);
  return firsts.map(({ name }) => some.filter((other) => isSame(other.name, name)));
}

const sum = (counts: readonly number[]): number => counts.reduce((all, count) => all + count, 0);

function lineOf(group: string, some: readonly Row[], choice: RangeChoice, dated: boolean): GroupPrevalence {
  const [lame, seen] = [column(some, "lame"), column(some, "seen")];
  const counts = { group, lame: sum(lame), seen: sum(seen) };
  if (counts.seen === 0) return { ...counts, share: undefined, low: undefined, high: undefined };
  const dates = dated ? column(some, "day") : undefined;
  return { ...counts, share: counts.lame / counts.seen, ...prevalenceRange(lame, seen, { ...choice, dates }) };
}

describe("any groups", () => {
  it("have the share and the range of their own rows, to the last digit, and so have all together", () => {
    fc.assert(
      fc.property(rows, fc.constantFrom(...spreadWords), fc.boolean(), (some, spread, dated) => {
        const choice = { confidence: 0.95, spread };
        const found = prevalenceByGroup(column(some, "name"), column(some, "lame"), column(some, "seen"), {
          ...choice,
          dates: dated ? column(some, "day") : undefined,
        });
        expect(found).toEqual([
          ...parted(some).map((own) => lineOf(own[0]?.name.trim().replace(/ +/g, " ") ?? "", own, choice, dated)),
          lineOf("all", some, choice, dated),
        ]);
      }),
      { numRuns: 400 },
    );
  });

  it("are added up by their names", () => {
    fc.assert(
      fc.property(rows, (some) => {
        const tally = tallyByName(
          { argument: "flocks", names: column(some, "name") },
          column(some, "lame"),
          column(some, "seen"),
        );
        expect(tally.map(({ lame, seen }) => [lame, seen])).toEqual(
          parted(some).map((own) => [sum(column(own, "lame")), sum(column(own, "seen"))]),
        );
      }),
    );
  });
});
