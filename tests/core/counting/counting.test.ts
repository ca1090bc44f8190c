import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { categoryMix } from "../../../src/core/counting/categoryMix.ts";
import { pooledPrevalence } from "../../../src/core/counting/pooledPrevalence.ts";
import { prevalenceByGroup } from "../../../src/core/counting/prevalenceByGroup.ts";
import { scorePrevalence } from "../../../src/core/counting/scorePrevalence.ts";
import { targetCheck } from "../../../src/core/counting/targetCheck.ts";
import { wilsonInterval } from "../../../src/core/statistics/wilsonInterval.ts";
import { expectNear } from "../near.ts";
import { problemOf } from "../problemOf.ts";

const row = fc.integer({ min: 0, max: 300 }).chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));
const someRows = fc.array(row, { minLength: 1, maxLength: 30 }).filter((rows) => rows.some(([, n]) => n > 0));
const columns = (rows: readonly [number, number][]) => [rows.map(([x]) => x), rows.map(([, n]) => n)] as const;

describe("pooledPrevalence", () => {
  it("pools the rows", () => {
    expect(pooledPrevalence([4], [20])).toEqual({ lame: 4, seen: 20, share: 0.2 });
    expect(pooledPrevalence([1, 0, 3], [10, 0, 10])).toEqual({ lame: 4, seen: 20, share: 0.2 });
  });

  it("names the row with more lame than seen", () => {
    const problem = problemOf(() => pooledPrevalence([1, 21], [10, 20]));
    expect(problem.place).toEqual({ argument: "lame", index: 1 });
    expect(problem.message).toContain("21 is more than the 20 seen");
  });

  it("refuses columns of different length", () => {
    expect(() => pooledPrevalence([1], [10, 20])).toThrow("lame: lame has 1 row and seen has 2");
  });

  it("reports nothing when no sheep were seen", () => {
    expect(problemOf(() => pooledPrevalence([0, 0], [0, 0])).code).toBe("#N/A");
    expect(problemOf(() => pooledPrevalence([], [])).code).toBe("#N/A");
  });

  it("does not depend on the order of the rows", () => {
    fc.assert(
      fc.property(someRows, (rows) => {
        expect(pooledPrevalence(...columns([...rows].reverse()))).toEqual(pooledPrevalence(...columns(rows)));
      }),
    );
  });

  it("adds up a million rows", () => {
    const lame = new Array<number>(1e6).fill(1);
    const seen = new Array<number>(1e6).fill(20);
    expect(pooledPrevalence(lame, seen)).toEqual({ lame: 1e6, seen: 2e7, share: 0.05 });
  });
});

describe("scorePrevalence", () => {
  it("counts from the lowest lame score on", () => {
    expect(scorePrevalence([0, 1, 2, 3], 2)).toBe(0.5);
    expect(scorePrevalence([0, 1, 2, 3], 4)).toBe(0);
  });

  it("reports nothing without a score", () => {
    expect(problemOf(() => scorePrevalence([], 2)).code).toBe("#N/A");
  });
});

describe("targetCheck", () => {
  const ask = (lame: number, seen: number, target: number, flockSize?: number) =>
    targetCheck([lame], [seen], { target, confidence: 0.95, flockSize });

  it("settles what can be settled", () => {
    expect(ask(1, 200, 0.05, 500)).toBe("below target");
    expect(ask(30, 200, 0.05, 500)).toBe("above target");
    expect(ask(2, 60, 0.05, 60)).toBe("below target");
    expect(ask(4, 60, 0.05, 60)).toBe("above target");
    expect(ask(3, 60, 0.05, 60)).toBe("on target");
  });

  // One gather with the spread that is supposed between gathers amounts to 200 / (1 + 199 × 0.03) × (1.96 / 3.18)² = 10.88
  // sheep (z and t of scipy.stats); of Wilson's low limits for x / 200 of them that of 36 is the first above 0.05.
  it("is sure of one gather only where gathers that differ would leave no doubt", () => {
    const inTheseCounts = "in these counts only";
    expect(ask(1, 200, 0.05)).toBe(`below target ${inTheseCounts}`);
    expect(ask(0, 200, 0.05)).toBe(`below target ${inTheseCounts}`);
    expect(ask(17, 200, 0.05)).toBe(`above target ${inTheseCounts}`);
    expect(ask(35, 200, 0.05)).toBe(`above target ${inTheseCounts}`);
    expect(ask(36, 200, 0.05)).toBe("above target");
    const choice = { target: 0.05, confidence: 0.95 };
    expect(targetCheck([1, 0], [100, 100], { ...choice, dates: [46000, 46000] })).toBe(`below target ${inTheseCounts}`);
    expect(targetCheck([1], [200], { ...choice, spread: "chance" })).toBe("below target");
  });

  it("says how many more to look at", () => {
    // z² × .05 × .95 / .02² = 456.2: at 457 sheep the target leaves Wilson's interval.
    expect(ask(3, 100, 0.05)).toBe("not settled yet: look at about 357 more");
  });

  // 3 and 0 of 20 in a flock of 100: 5 to 35 and 0 to 15 lame, by R's phyper.
  it("does not settle what lies on the target", () => {
    expect(ask(3, 20, 0.05, 100)).toMatch(/^not settled/);
    expect(ask(3, 20, 0.0499, 100)).toBe("above target");
    expect(ask(0, 20, 0.15, 100)).toMatch(/^not settled/);
    expect(ask(0, 20, 0.1501, 100)).toBe("below target");
  });

  // Below 2 % of 60 is at most one lame. With two, none is seen among 50 with the chance 10 · 9 / (60 · 59) = 0.0254, and
  // among 51 with 9 · 8 / (60 · 59) = 0.0203: below 0.025 first at 51.
  it("says how many more in a flock of known size", () => {
    expect(ask(0, 20, 0.02, 60)).toBe("not settled yet: look at about 31 more");
    expect(ask(0, 50, 0.02, 60)).toBe("not settled yet: look at about 1 more");
    expect(ask(0, 51, 0.02, 60)).toBe("below target");
  });

  it("names a number that settles it, and one fewer does not", () => {
    fc.assert(
      fc.property(row, fc.double({ min: 0.005, max: 0.3, noNaN: true }), ([lame, n], target) => {
        const seen = Math.max(n, 1);
        const answer = ask(lame, seen, target);
        const more = Number(/about (\d+) more/.exec(answer)?.[1] ?? NaN);
        if (Number.isNaN(more)) return;
        // The same share, of fractional sheep where it must be.
        const settled = (m: number) => {
          const { low, high } = wilsonInterval((lame / seen) * m, m, 0.95);
          return high < target || low > target;
        };
        expect(settled(seen + more + 1)).toBe(true);
        expect(settled(seen + more - 1.5)).toBe(false);
      }),
    );
  });

  it("knows when the flock is too small", () => {
    expect(ask(1, 20, 0.05, 40)).toBe(
      "not settled: even all 40 sheep are not enough if the share stays as it was seen",
    );
    expect(ask(1, 10, 0.05, 40)).toMatch(/^not settled yet: look at about \d+ more$/);
  });

  it("knows when no number is enough", () => {
    expect(ask(1, 20, 0.05)).toBe(
      "not settled: the share seen is the target itself, and no number of sheep would tell the two apart",
    );
    expect(ask(0, 20, 0)).toContain("no number of sheep");
  });
});

describe("prevalenceByGroup", () => {
  it("gives the groups as they first appear, then all", () => {
    const rows = prevalenceByGroup(["Rams", "ewes", " rams ", "Ewes"], [1, 2, 0, 3], [10, 40, 10, 60], {
      confidence: 0.95,
      spread: "chance",
    });
    expect(prevalenceByGroup(["Low  Field", "low field"], [1, 2], [10, 40], { confidence: 0.95 })[0]).toMatchObject({
      group: "Low Field",
      lame: 3,
      seen: 50,
    });
    expect(rows.map(({ group, lame, seen, share }) => ({ group, lame, seen, share }))).toEqual([
      { group: "Rams", lame: 1, seen: 20, share: 0.05 },
      { group: "ewes", lame: 5, seen: 100, share: 0.05 },
      { group: "all", lame: 6, seen: 120, share: 0.05 },
    ]);
    const { low, high } = wilsonInterval(5, 100, 0.95);
    expect(rows[1]).toMatchObject({ low, high });
  });

  it("keeps a group of which none was seen, without a share", () => {
    expect(prevalenceByGroup(["a", "b"], [0, 1], [0, 10], { confidence: 0.95 })[0]).toEqual({
      group: "a",
      lame: 0,
      seen: 0,
      share: undefined,
      low: undefined,
      high: undefined,
    });
  });

  it("refuses a total row, more lame than seen, and nothing seen", () => {
    expect(problemOf(() => prevalenceByGroup(["a", "All"], [1, 1], [9, 9], { confidence: 0.95 })).place).toEqual({
      argument: "groups",
      index: 1,
    });
    expect(problemOf(() => prevalenceByGroup(["a"], [10], [9], { confidence: 0.95 })).place).toEqual({
      argument: "lame",
      index: 0,
    });
    expect(problemOf(() => prevalenceByGroup(["a"], [0], [0], { confidence: 0.95 })).code).toBe("#N/A");
    expect(() => prevalenceByGroup(["a"], [1, 1], [9, 9], { confidence: 0.95 })).toThrow("groups has 1 rows");
  });
});

describe("categoryMix", () => {
  it("puts the most frequent first, ties as they first appear", () => {
    const mix = categoryMix(["scald", "footrot", "CODD", "footrot", "CODD"], 0.95, "lesions");
    expect(mix.map(({ name, cases }) => [name, cases])).toEqual([
      ["footrot", 2],
      ["CODD", 2],
      ["scald", 1],
    ]);
    const { low, high } = wilsonInterval(2, 5, 0.95);
    expect(mix[0]).toEqual({ name: "footrot", cases: 2, share: 0.4, low, high });
  });

  it("shares add up to one and nothing is dropped", () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom("a", "b", "c", "d"), { minLength: 1 }), (names) => {
        const mix = categoryMix(names, 0.9, "lesions");
        expectNear(
          mix.reduce((sum, { share }) => sum + share, 0),
          1,
          1e-12,
        );
        expect(mix.reduce((sum, { cases }) => sum + cases, 0)).toBe(names.length);
      }),
    );
  });

  it("reports nothing without a case", () => {
    expect(problemOf(() => categoryMix([], 0.95, "lesions")).code).toBe("#N/A");
  });
});
