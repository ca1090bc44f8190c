import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { poissonInterval } from "../../../src/core/statistics/poissonInterval.ts";
import { newCaseRate } from "../../../src/core/watching/newCaseRate.ts";
import { rateChange } from "../../../src/core/watching/rateChange.ts";
import { sheepDays } from "../../../src/core/watching/sheepDays.ts";
import { expectNear } from "../near.ts";
import { problemOf } from "../problemOf.ts";
import { cases, ownReferences, references } from "../references.ts";

// Made by tests/references/watching/make.py.
const values = ownReferences(import.meta.url);

describe("new cases", () => {
  // R 4.2 stats, qchisq: χ²(α/2, 2x)/2 and χ²(1 − α/2, 2x + 2)/2.
  it.each([
    [0, 0, 3.688879],
    [1, 0.025318, 5.571643],
    [5, 1.623486, 11.668332],
    [10, 4.795389, 18.390356],
    [100, 81.363991, 121.626794],
  ])("%i cases, 95 %%", (x, low, high) => {
    expect(poissonInterval(x, 0.95).low).toBeCloseTo(low, 6);
    expect(poissonInterval(x, 0.95).high).toBeCloseTo(high, 6);
  });

  it("agrees with the reference values", () => {
    for (const [[x, c], [low, high]] of cases<[number, number], [number, number]>(values, "garwood")) {
      expectNear(poissonInterval(x, c).low, low, 1e-10, `low ${x} ${c}`);
      expectNear(poissonInterval(x, c).high, high, 1e-10, `high ${x} ${c}`);
    }
  });

  // R 4.2 stats.
  it("11 cases in 800 sheep-years", () => {
    const { rate, low, high } = newCaseRate(11, 800 * 365.25, 0.95);
    expect(rate).toBe(1.375);
    expectNear(low, 0.6863950459, 1e-9);
    expectNear(high, 2.460254814, 1e-9);
  });

  it("gives the rate for as many sheep-days as asked", () => {
    expect(newCaseRate(3, 1000, 0.95, 1000).rate).toBe(3);
  });

  it("reports nothing without sheep-days", () => {
    expect(problemOf(() => newCaseRate(3, 0, 0.95)).code).toBe("#N/A");
  });
});

describe("change of a rate", () => {
  // R 4.2 stats, poisson.test.
  it("41 in 28010 against 15 in 19017", () => {
    const { ratio, low, high, p } = rateChange({ cases: 15, days: 19_017 }, { cases: 41, days: 28_010 }, 0.95);
    expectNear(ratio, 1.855758658, 1e-9);
    expectNear(low, 1.005684063, 1e-9);
    expectNear(high, 3.609300311, 1e-9);
    expectNear(p, 0.04085203, 1e-6);
  });

  it("agrees with the reference values", () => {
    type Four = [number | null, number, number | null, number];
    for (const [[x0, d0, x1, d1, c], expected] of cases<number[], Four>(values, "rateChange")) {
      const change = rateChange({ cases: x0 ?? 0, days: d0 ?? 0 }, { cases: x1 ?? 0, days: d1 ?? 0 }, c ?? 0);
      const [ratio, low, high, p] = expected.map((value) => value ?? Infinity) as [number, number, number, number];
      const what = `${x0} in ${d0}, ${x1} in ${d1}`;
      if (ratio === Infinity) expect([change.ratio, change.high]).toEqual([Infinity, Infinity]);
      else {
        expectNear(change.ratio, ratio, 1e-12, what);
        expectNear(change.high, high, 1e-10, what);
      }
      expectNear(change.low, low, 1e-10, what);
      expectNear(change.p, p, 1e-8, what);
    }
  });

  // Made by tests/references/rates/make.py.
  it("keeps its digits where one period holds nearly all cases", () => {
    for (const [[x0, d0, x1, d1, c], [ratio, low, high, p]] of cases<number[], [number, number, number, number]>(
      references("rates"),
      "lopsided",
    )) {
      const change = rateChange({ cases: x0 ?? 0, days: d0 ?? 0 }, { cases: x1 ?? 0, days: d1 ?? 0 }, c ?? 0);
      const what = `${x0} in ${d0}, ${x1} in ${d1}, ${c}`;
      expectNear(change.ratio, ratio, 1e-14, what);
      expectNear(change.low, low, 1e-11, what);
      expectNear(change.high, high, 1e-11, what);
      expectNear(change.p, p, 1e-7, what);
    }
  });

  it("turns round when before and after change places", () => {
    const some = fc.record({ cases: fc.integer({ min: 1, max: 500 }), days: fc.integer({ min: 1, max: 1e6 }) });
    fc.assert(
      fc.property(some, some, (one, other) => {
        const there = rateChange(one, other, 0.9);
        const back = rateChange(other, one, 0.9);
        expectNear(there.ratio * back.ratio, 1, 1e-12);
        expectNear(there.low * back.high, 1, 1e-12);
        expectNear(there.p, back.p, 1e-9);
      }),
    );
  });

  it("refuses periods without sheep-days, and reports nothing without cases", () => {
    const some = { cases: 3, days: 100 };
    expect(problemOf(() => rateChange({ cases: 1, days: 0 }, some, 0.95)).place.argument).toBe("days_before");
    expect(problemOf(() => rateChange(some, { cases: 1, days: 0 }, 0.95)).place.argument).toBe("days_after");
    expect(problemOf(() => rateChange({ cases: 0, days: 9 }, { cases: 0, days: 9 }, 0.95)).code).toBe("#N/A");
  });
});

describe("sheep-days", () => {
  it("agrees with counting day by day", () => {
    for (const [[counts, until], days] of cases<[[number, number][], number], number>(values, "sheepDays")) {
      const dates = counts.map(([day]) => day);
      const heads = counts.map(([, head]) => head);
      expect(sheepDays(dates, heads, until)).toBe(days);
      expect(sheepDays([...dates].reverse(), [...heads].reverse(), until)).toBe(days);
    }
  });

  it("refuses two counts on one day and an end before the first count", () => {
    expect(problemOf(() => sheepDays([46000, 46010, 46000], [1, 2, 3], 46100)).place).toEqual({
      argument: "dates",
      index: 2,
    });
    expect(problemOf(() => sheepDays([46000], [1], 45999)).message).toBe(
      "until: 8 Dec 2025 is before the first head count on 9 Dec 2025; enter a later day",
    );
    expect(problemOf(() => sheepDays([], [], 46000)).code).toBe("#N/A");
    expect(problemOf(() => sheepDays([46000], [1, 2], 46100)).place.argument).toBe("dates");
  });
});
