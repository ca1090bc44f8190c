import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { standardPrevalence } from "../../../src/core/counting/standardPrevalence.ts";
import { weightedPrevalence } from "../../../src/core/counting/weightedPrevalence.ts";
import { weightedShare } from "../../../src/core/counting/weightedShare.ts";
import { wilsonInterval } from "../../../src/core/statistics/wilsonInterval.ts";
import { expectNear } from "../near.ts";
import { problemOf } from "../problemOf.ts";
import { cases, references } from "../references.ts";

// Made by tests/references/comparing/script.R: survey::svystandardize.
const values = references("comparing");

const twoFlocks = { flocks: ["A", "A", "B", "B"], groups: ["ewes", "lambs", "ewes", "lambs"] };

describe("standardPrevalence", () => {
  it("agrees with the reference values", () => {
    for (const [numbers, shares] of cases<number[], number[]>(values, "standard")) {
      const [lame, seen, sheep] = [numbers.slice(0, 4), numbers.slice(4, 8), numbers.slice(8)];
      const rows = standardPrevalence({ ...twoFlocks, lame, seen }, { groups: ["ewes", "lambs"], sheep }, 0.95);
      for (const [place, share] of shares.entries()) expectNear(rows[place]?.share ?? NaN, share, 1e-12);
    }
  });

  // By hand: ewes 10 %, lambs 5 % in both flocks, so both are 7.5 % with as many of each, whatever they hold now.
  it("flocks alike in each group are alike, whatever their make-up", () => {
    const rows = standardPrevalence(
      { ...twoFlocks, lame: [9, 1, 2, 6], seen: [90, 20, 20, 120] },
      { groups: ["ewes", "lambs"], sheep: [1, 1] },
      0.95,
    );
    expect(rows.map(({ asSeen }) => asSeen)).toEqual([10 / 110, 8 / 140]);
    for (const { share } of rows) expect(share).toBeCloseTo(0.075, 12);
  });

  it("without a standard turns to the make-up of all sheep seen", () => {
    const counts = { ...twoFlocks, lame: [9, 1, 2, 6], seen: [90, 20, 20, 120] };
    const all = { groups: ["ewes", "lambs"], sheep: [110, 140] };
    expect(standardPrevalence(counts, undefined, 0.95)).toEqual(standardPrevalence(counts, all, 0.95));
  });

  it("gives no share to a flock of which a group was not seen, and says which", () => {
    const counts = { flocks: ["A", "A", "B"], groups: ["ewes", "lambs", "ewes"], lame: [1, 0, 2], seen: [20, 0, 30] };
    const rows = standardPrevalence(counts, { groups: ["ewes", "lambs"], sheep: [3, 1] }, 0.95);
    expect(rows.map(({ share, note }) => [share, note])).toEqual([
      [undefined, "no lambs seen"],
      [undefined, "no lambs seen"],
    ]);
    const ewesOnly = standardPrevalence(counts, { groups: ["ewes", "lambs"], sheep: [3, 0] }, 0.95);
    expect(ewesOnly.map(({ share }) => share)).toEqual([1 / 20, 2 / 30]);
    expect(ewesOnly[0]?.high).toBeCloseTo(wilsonInterval(1, 20, 0.95).high, 12);
  });

  it("refuses a group outside the standard, a group twice, and a standard of no sheep", () => {
    const counts = { flocks: ["A"], groups: ["ewes"], lame: [1], seen: [20] };
    const ask = (groups: string[], sheep: number[]) => () => standardPrevalence(counts, { groups, sheep }, 0.95);
    expect(problemOf(ask(["lambs"], [1])).place).toEqual({ argument: "groups", index: 0 });
    expect(problemOf(ask(["ewes", " Ewes"], [1, 1])).place).toEqual({ argument: "standard_groups", index: 1 });
    expect(problemOf(ask(["ewes"], [0])).place.argument).toBe("standard_sheep");
    expect(problemOf(() => standardPrevalence({ ...counts, lame: [0], seen: [0] }, undefined, 0.95)).code).toBe("#N/A");
  });

  it("names the first groups that were not seen, and how many more there are", () => {
    const groups = ["g1", "g2", "g3", "g4", "g5", "g6", "g7", "g8"];
    const standard = { groups, sheep: groups.map(() => 1) };
    const [flock] = standardPrevalence({ flocks: ["A"], groups: ["g2"], lame: [1], seen: [9] }, standard, 0.95);
    expect(flock?.note).toBe("no g1, g3, g4, g5, g6 and 2 more seen");
  });
});

describe("weightedShare", () => {
  it("one endless group is Wilson's interval", () => {
    const { share, low, high } = weightedShare([{ weight: 1, lame: 3, seen: 40, left: 1 }], 1.959963984540054);
    const wilson = wilsonInterval(3, 40, 0.95);
    expect(share).toBe(3 / 40);
    expect(low).toBeCloseTo(wilson.low, 12);
    expect(high).toBeCloseTo(wilson.high, 12);
  });

  it("limits lie within 0 to 1 and hold the share", () => {
    const part = fc
      .integer({ min: 1, max: 40 })
      .chain((seen) => fc.record({ seen: fc.constant(seen), lame: fc.integer({ min: 0, max: seen }) }));
    fc.assert(
      fc.property(fc.array(part, { minLength: 1, maxLength: 30 }), (groups) => {
        const parts = groups.map((group) => ({ ...group, weight: 1 / groups.length, left: 1 }));
        const { share, low, high } = weightedShare(parts, 1.96);
        expect(low).toBeGreaterThanOrEqual(0);
        expect(low).toBeLessThanOrEqual(share);
        expect(high).toBeGreaterThanOrEqual(share);
        expect(high).toBeLessThanOrEqual(1);
      }),
    );
  });
});

describe("WEIGHTEDPREV with many small groups", () => {
  // Every outcome enumerated by how many groups show 0, 1, 2 … lame: groups alike, so their order does not matter.
  // 20 groups of 20 with one lame each, 5 looked at: one is met with the chance 5 / 20, so the lame met are
  // binomial with 20 draws (by hand).
  it.each([
    [10, 20, 5],
    [20, 20, 5],
    [40, 20, 5],
    [40, 10, 3],
    [40, 15, 2],
  ])(
    "%i groups of %i with one lame each, %i looked at: the range holds the truth 93 times in 100",
    (groups, size, n) => {
      const met = n / size;
      let held = 0;
      let chance = (1 - met) ** groups;
      for (let k = 0; k <= groups; k++) {
        const lame = Array.from({ length: groups }, (_, group) => (group < k ? 1 : 0));
        const { low, high } = weightedPrevalence(Array(groups).fill(size), lame, Array(groups).fill(n), 0.95);
        if (low <= 1 / size && 1 / size <= high) held += chance;
        chance *= ((groups - k) / (k + 1)) * (met / (1 - met));
      }
      expect(held).toBeGreaterThanOrEqual(0.93);
    },
  );
});
