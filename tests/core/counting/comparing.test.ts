import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { prevalenceChange } from "../../../src/core/counting/prevalenceChange.ts";
import { prevalenceRange } from "../../../src/core/counting/prevalenceRange.ts";
import { prevalenceTrend } from "../../../src/core/counting/prevalenceTrend.ts";
import { truePrevalence } from "../../../src/core/counting/truePrevalence.ts";
import { fewestForRange, weightedPrevalence } from "../../../src/core/counting/weightedPrevalence.ts";
import { fisherExact } from "../../../src/core/statistics/fisherExact.ts";
import { expectNear } from "../near.ts";
import { problemOf } from "../problemOf.ts";

const change = (x1: number, n1: number, x0: number, n0: number) =>
  prevalenceChange({ lame: [x0], seen: [n0] }, { lame: [x1], seen: [n1] }, 0.95);

describe("prevalenceChange", () => {
  // Newcombe 1998 (Stat Med 17:873), table II, method 10: its four decimals, from memory. More digits of the same are in
  // references.test.ts.
  it.each([
    [56, 70, 48, 80, 0.2, 0.0524, 0.3339],
    [9, 10, 3, 10, 0.6, 0.1705, 0.809],
    [0, 10, 0, 20, 0, -0.1611, 0.2775],
  ])("%i/%i − %i/%i", (x1, n1, x0, n0, difference, low, high) => {
    const found = change(x1, n1, x0, n0);
    expect(found.change).toBeCloseTo(difference, 12);
    expect(found.low).toBeCloseTo(low, 4);
    expect(found.high).toBeCloseTo(high, 4);
  });

  // R 4.2 stats, fisher.test.
  it("Fisher's exact p", () => {
    expectNear(fisherExact(3, 4, 1, 4), 0.4857142857, 1e-9);
    expectNear(change(56, 70, 48, 80).p, 0.01252112975, 1e-9);
    expectNear(change(5, 56, 0, 29).p, 0.1606214432, 1e-9);
  });

  it("turns round when before and after change places", () => {
    const count = fc
      .integer({ min: 1, max: 2000 })
      .chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));
    fc.assert(
      fc.property(count, count, ([x1, n1], [x0, n0]) => {
        const there = change(x1, n1, x0, n0);
        const back = change(x0, n0, x1, n1);
        expect(there.low).toBeCloseTo(-back.high, 12);
        expectNear(there.p, back.p, 1e-9);
        expect(there.p).toBeGreaterThanOrEqual(0);
        expect(there.p).toBeLessThanOrEqual(1 + 1e-12);
        expect(there.low).toBeGreaterThanOrEqual(-1);
        expect(there.high).toBeLessThanOrEqual(1);
      }),
    );
  });

  it("keeps the digits of a very small p, and copes with very large counts", () => {
    // Two tables of C(1000, 500): R 4.2 stats, lchoose(1000, 500) = 689.467261567851.
    expectNear(Math.log(fisherExact(0, 500, 500, 500) / 2), -689.467261567851, 1e-13);
    expect(fisherExact(5e6, 1e7, 5e6, 1e7)).toBe(1);
    expect(fisherExact(5_000_000, 1e7, 5_005_000, 1e7)).toBeGreaterThan(0.02);
  });

  // PREVRANGE over several gathers is held to R's survey package in gathers.test.ts.
  it("is made of the ranges of the two times where they are several gathers", () => {
    const [before, after] = [
      { lame: [14, 9, 12, 15], seen: [100, 100, 110, 120] },
      { lame: [3, 4, 2], seen: [100, 105, 110] },
    ];
    const found = prevalenceChange(before, after, 0.95);
    const [old, now] = [before, after].map(({ lame, seen }) => prevalenceRange(lame, seen, { confidence: 0.95 }));
    const [p0, p1] = [50 / 430, 9 / 315];
    expect(found.change).toBeCloseTo(p1 - p0, 12);
    expect(found.low).toBeCloseTo(p1 - p0 - Math.hypot(p1 - (now?.low ?? NaN), (old?.high ?? NaN) - p0), 12);
    expect(found.high).toBeCloseTo(p1 - p0 + Math.hypot((now?.high ?? NaN) - p1, p0 - (old?.low ?? NaN)), 12);
    // 0 lies on the edge of the range for 1 − p.
    expect(prevalenceChange(before, after, 1 - found.p).high).toBeCloseTo(0, 10);
    const chance = prevalenceChange(before, after, 0.95, "chance");
    expect(chance).toEqual(prevalenceChange({ lame: [50], seen: [430] }, { lame: [9], seen: [315] }, 0.95));
    expect(chance.high).toBeLessThan(found.high);
  });

  it("is never surer of several gathers than of as many separate looks", () => {
    const gather = fc
      .integer({ min: 2, max: 300 })
      .chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));
    const time = fc.array(gather, { minLength: 2, maxLength: 6 });
    const columns = (rows: readonly (readonly [number, number])[]) => ({
      lame: rows.map(([x]) => x),
      seen: rows.map(([, n]) => n),
    });
    fc.assert(
      fc.property(time, time, (one, other) => {
        const [before, after] = [columns(one), columns(other)];
        const [wide, narrow] = [undefined, "chance" as const].map((spread) =>
          prevalenceChange(before, after, 0.95, spread),
        );
        if (wide === undefined || narrow === undefined) return;
        expect(wide.low).toBeLessThanOrEqual(narrow.low + 1e-12);
        expect(wide.high).toBeGreaterThanOrEqual(narrow.high - 1e-12);
        expect(wide.p < 0.05).toBe(wide.low > 0 || wide.high < 0);
        expect(prevalenceChange(after, before, 0.95).p).toBeCloseTo(wide.p, 9);
      }),
      { numRuns: 60 },
    );
  });

  it("names the columns as the formula does", () => {
    const none = { lame: [0], seen: [0] };
    const some = { lame: [1], seen: [9] };
    expect(problemOf(() => prevalenceChange(none, some, 0.95)).place.argument).toBe("seen_before");
    expect(problemOf(() => prevalenceChange(some, none, 0.95)).place.argument).toBe("seen_after");
    const wrong = problemOf(() => prevalenceChange(some, { lame: [1, 10], seen: [9, 9] }, 0.95));
    expect(wrong.place).toEqual({ argument: "lame_after", index: 1 });
  });
});

describe("prevalenceTrend", () => {
  // Agresti, Categorical Data Analysis: alcohol and malformations; R 4.2 stats, prop.trend.test.
  it("Agresti's table", () => {
    const { z, p } = prevalenceTrend([0, 0.5, 1.5, 4, 7], [48, 38, 5, 1, 1], [17114, 14502, 793, 127, 38], "chance");
    expectNear(z * z, 6.5701339, 1e-7);
    expectNear(p, 0.01037041, 1e-6);
  });

  it("two gathers give the slope between them", () => {
    expectNear(prevalenceTrend([46000, 46060], [8, 4], [40, 40]).changePer30Days, -0.05, 1e-12);
  });

  it("shows no change where none or all are lame", () => {
    expect(prevalenceTrend([46000, 46030], [0, 0], [40, 50])).toEqual({ changePer30Days: 0, z: 0, p: 1 });
    expect(prevalenceTrend([46000, 46030], [40, 50], [40, 50])).toEqual({ changePer30Days: 0, z: 0, p: 1 });
  });

  it("does not depend on the order of rows, nor on how a day's sheep are split into rows", () => {
    const row = fc
      .integer({ min: 1, max: 200 })
      .chain((n) => fc.tuple(fc.integer({ min: 46000, max: 46400 }), fc.integer({ min: 0, max: n }), fc.constant(n)));
    fc.assert(
      fc.property(fc.array(row, { minLength: 2, maxLength: 20 }), (rows) => {
        fc.pre(new Set(rows.map(([day]) => day)).size > 1);
        const trend = (of: typeof rows) =>
          prevalenceTrend(
            of.map(([d]) => d),
            of.map(([, x]) => x),
            of.map(([, , n]) => n),
          );
        const found = trend(rows);
        expect(trend([...rows].reverse()).z).toBeCloseTo(found.z, 9);
        const split = rows.flatMap(([d, x, n]): typeof rows => [
          [d, x, x],
          [d, 0, n - x],
        ]);
        expect(trend(split).z).toBeCloseTo(found.z, 9);
      }),
    );
  });

  it("reports nothing for a single day", () => {
    expect(problemOf(() => prevalenceTrend([46000, 46000], [1, 2], [9, 9])).code).toBe("#N/A");
    expect(problemOf(() => prevalenceTrend([46000], [1, 2], [9, 9])).place.argument).toBe("dates");
  });
});

describe("truePrevalence", () => {
  const look = { sensitivity: 0.85, specificity: 0.97 };

  // R with epiR 2.0.57: epi.prev(60, 300, .85, .97, method = "wilson").
  it("a look known to be imperfect", () => {
    const { share, low, high } = truePrevalence([60], [300], look, 0.95);
    expectNear(share, 0.2073170732, 1e-9);
    expectNear(low, 0.1568986085, 1e-9);
    expectNear(high, 0.2669864924, 1e-9);
  });

  it("a perfect look changes nothing", () => {
    expect(truePrevalence([3], [20], { sensitivity: 1, specificity: 1 }, 0.95).share).toBe(0.15);
  });

  it("sets estimates beyond the ends to the end they passed", () => {
    expect(truePrevalence([0], [50], look, 0.95)).toMatchObject({ share: 0, low: 0 });
    expect(truePrevalence([50], [50], look, 0.95)).toMatchObject({ share: 1, high: 1 });
  });

  it("refuses a look that tells nothing", () => {
    const refused = problemOf(() => truePrevalence([1], [9], { sensitivity: 0.4, specificity: 0.6 }, 0.95));
    expect(refused.message).toContain("sensitivity: 0.4 with a specificity of 0.6 tells no more than tossing a coin");
  });
});

describe("weightedPrevalence", () => {
  // R: survey::svymean with strata and finite correction.
  it("three groups", () => {
    const found = weightedPrevalence([120, 60, 220], [6, 1, 4], [40, 30, 50], 0.95);
    expectNear(found.share, 0.094, 1e-12);
    expectNear(found.standardError ?? NaN, 0.02365916074, 1e-9);
    expect(found.low).toBeLessThan(0.094);
    expect(found.high).toBeGreaterThan(0.094);
  });

  it("is the share itself where every group was wholly seen", () => {
    expect(weightedPrevalence([30, 10], [3, 1], [30, 10], 0.95)).toEqual({
      share: 0.1,
      low: 0.1,
      high: 0.1,
      standardError: 0,
    });
  });

  it("has a width where none was lame", () => {
    expect(weightedPrevalence([200, 100], [0, 0], [20, 20], 0.95).high).toBeGreaterThan(0.05);
  });

  it("has no standard error where one sheep of a group was seen, but limits all the same", () => {
    const found = weightedPrevalence([200, 100], [2, 0], [20, 1], 0.95);
    expect(found.standardError).toBeUndefined();
    expect(found.high).toBeLessThanOrEqual(1);
    expect(found.high).toBeGreaterThan(found.share);
  });

  it("holds the share and does not depend on the order of groups", () => {
    const group = fc
      .integer({ min: 1, max: 500 })
      .chain((size) => fc.tuple(fc.constant(size), fc.integer({ min: 1, max: size })))
      .chain(([size, n]) => fc.tuple(fc.constant(size), fc.integer({ min: 0, max: n }), fc.constant(n)));
    fc.assert(
      fc.property(fc.array(group, { minLength: 1, maxLength: 8 }), (groups) => {
        fc.pre(groups.reduce((sum, [, , n]) => sum + n, 0) >= fewestForRange);
        const of = (some: typeof groups) =>
          weightedPrevalence(
            some.map(([size]) => size),
            some.map(([, x]) => x),
            some.map(([, , n]) => n),
            0.95,
          );
        const found = of(groups);
        expect(found.low).toBeGreaterThanOrEqual(0);
        expect(found.low).toBeLessThanOrEqual(found.share + 1e-12);
        expect(found.high).toBeGreaterThanOrEqual(found.share - 1e-12);
        expect(found.high).toBeLessThanOrEqual(1);
        expect(of([...groups].reverse()).low).toBeCloseTo(found.low, 10);
      }),
    );
  });

  it("refuses fewer than ten sheep in all, unless they are the whole flock", () => {
    const few = () => weightedPrevalence([20, 20, 20], [0, 1, 0], [3, 3, 3], 0.95);
    expect(problemOf(few).place).toEqual({ argument: "seen" });
    expect(weightedPrevalence([20, 20, 20], [0, 1, 0], [3, 3, 4], 0.95).high).toBeLessThan(1);
    expect(weightedPrevalence([2, 3], [1, 0], [2, 3], 0.95)).toMatchObject({ low: 0.2, high: 0.2 });
  });

  it("refuses more seen than there are, and a group nobody looked at", () => {
    expect(problemOf(() => weightedPrevalence([100, 10], [1, 1], [20, 11], 0.95)).place).toEqual({
      argument: "group_size",
      index: 1,
    });
    expect(problemOf(() => weightedPrevalence([100, 10], [1, 0], [20, 0], 0.95)).place).toEqual({
      argument: "seen",
      index: 1,
    });
    expect(problemOf(() => weightedPrevalence([0], [0], [0], 0.95)).code).toBe("#N/A");
    expect(problemOf(() => weightedPrevalence([100], [1, 0], [20, 0], 0.95)).place.argument).toBe("group_size");
  });
});
