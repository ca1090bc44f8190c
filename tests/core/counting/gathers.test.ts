import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { countedLooks } from "../../../src/core/counting/countedLooks.ts";
import { prevalenceByGroup } from "../../../src/core/counting/prevalenceByGroup.ts";
import { prevalenceRange } from "../../../src/core/counting/prevalenceRange.ts";
import { prevalenceTrend } from "../../../src/core/counting/prevalenceTrend.ts";
import { targetCheck } from "../../../src/core/counting/targetCheck.ts";
import { betaBinomialQuantiles } from "../../../src/core/statistics/betaBinomialQuantiles.ts";
import { intervalMethods } from "../../../src/core/statistics/proportionInterval.ts";
import { studentScore } from "../../../src/core/statistics/studentScore.ts";
import { studentTwoSided } from "../../../src/core/statistics/studentTwoSided.ts";
import { expectNear } from "../near.ts";

interface RangeCase {
  readonly lame: readonly number[];
  readonly seen: readonly number[];
  readonly confidence: number;
  readonly effective: number;
  readonly wilson: readonly [number, number];
  readonly exact: readonly [number, number];
  readonly jeffreys: readonly [number, number];
}

interface TrendCase {
  readonly days: readonly number[];
  readonly lame: readonly number[];
  readonly seen: readonly number[];
  readonly change: number;
  readonly z: number;
  readonly p: number;
}

interface LimitCase {
  readonly n: number;
  readonly share: number;
  readonly inflation: number;
  readonly low: number;
  readonly high: number;
}

interface StudentCase {
  readonly confidence: number;
  readonly freedom: number;
  readonly score: number;
  readonly at: readonly number[];
  readonly p: readonly number[];
}

// Made by tests/references/gathers/script.R: survey's clustered variance, R's own distributions, lm, VGAM's beta-binomial.
const reference = JSON.parse(
  readFileSync(new URL("../../references/gathers/values.json", import.meta.url), "utf8"),
) as {
  readonly ranges: readonly RangeCase[];
  readonly trends: readonly TrendCase[];
  readonly limits: readonly LimitCase[];
  readonly student: readonly StudentCase[];
};

describe("against R", () => {
  it("the range over several gathers, by each method", () => {
    expect(reference.ranges.length).toBeGreaterThan(70);
    for (const { lame, seen, confidence, effective, ...methods } of reference.ranges) {
      expectNear(countedLooks(lame, seen, { confidence }).effective, effective, 1e-11, "separate looks");
      for (const method of ["wilson", "exact", "jeffreys"] as const) {
        const { low, high } = prevalenceRange(lame, seen, { confidence, method });
        const what = `${method} ${lame} of ${seen}`;
        expectNear(low, methods[method][0], 1e-9, `low ${what}`);
        expectNear(high, methods[method][1], 1e-10, `high ${what}`);
      }
    }
  });

  it("the trend through gathers that differ", () => {
    expect(reference.trends.length).toBeGreaterThan(15);
    for (const { days, lame, seen, change, z, p } of reference.trends) {
      const found = prevalenceTrend(days, lame, seen);
      expectNear(found.changePer30Days, change, 1e-8, "change");
      expectNear(found.z, z, 1e-8, "z");
      expectNear(found.p, p, 1e-8, "p");
    }
  });

  it("counts whose share varies", () => {
    expect(reference.limits.length).toBeGreaterThan(60);
    for (const { n, share, inflation, low, high } of reference.limits) {
      expect(betaBinomialQuantiles(0.00135, { n, share, inflation }), `${n} ${share} ${inflation}`).toEqual({
        low: low / n,
        high: high / n,
      });
    }
  });

  it("Student's t", () => {
    for (const { confidence, freedom, score, at, p } of reference.student) {
      expectNear(studentScore(confidence, freedom), score, 1e-10, `score ${confidence} ${freedom}`);
      at.forEach((t, index) => {
        expectNear(studentTwoSided(t, freedom), p[index] ?? NaN, 1e-9, `p ${t} ${freedom}`);
      });
    }
  });
});

const gather = fc.integer({ min: 1, max: 400 }).chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));
const gathers = fc.array(gather, { minLength: 2, maxLength: 12 });
const columns = (rows: readonly (readonly [number, number])[]) =>
  [rows.map(([lame]) => lame), rows.map(([, seen]) => seen)] as const;

describe("several gathers", () => {
  it("never count for more separate looks than there were", () => {
    fc.assert(
      fc.property(gathers, (rows) => {
        const [lame, seen] = columns(rows);
        const { effective, seen: all } = countedLooks(lame, seen, { confidence: 0.95 });
        expect(effective).toBeGreaterThan(0);
        expect(effective).toBeLessThanOrEqual(all);
      }),
    );
  });

  it("make a wider range the more they differ", () => {
    const width = (...lame: number[]) => {
      const { low, high } = prevalenceRange(lame, [100, 100, 100, 100], { confidence: 0.95 });
      return high - low;
    };
    expect(width(5, 5, 5, 5)).toBeLessThan(width(2, 8, 3, 7));
    expect(width(2, 8, 3, 7)).toBeLessThan(width(0, 15, 1, 4));
  });

  it("are taken as one look when that is asked for, and one gather as it is", () => {
    fc.assert(
      fc.property(gathers, (rows) => {
        const [lame, seen] = columns(rows);
        const { lame: x, seen: n } = countedLooks(lame, seen, { confidence: 0.95 });
        const plain = intervalMethods.wilson(x, n, 0.95);
        expect(prevalenceRange(lame, seen, { confidence: 0.95, spread: "chance" })).toEqual(plain);
        expect(prevalenceRange([x], [n], { confidence: 0.95 })).toEqual(plain);
        const dates = rows.map(() => 46000);
        expect(prevalenceRange(lame, seen, { confidence: 0.95, dates })).toEqual(plain);
      }),
    );
  });

  it("of which no sheep was seen say nothing", () => {
    const choice = { confidence: 0.95 };
    expect(prevalenceRange([4, 0, 9], [100, 0, 110], choice)).toEqual(prevalenceRange([4, 9], [100, 110], choice));
  });

  it("are told apart by their days", () => {
    const dates = [46000, 46030, 46000, 46030];
    expect(prevalenceRange([3, 5, 1, 4], [60, 50, 40, 60], { confidence: 0.9, dates })).toEqual(
      prevalenceRange([4, 9], [100, 110], { confidence: 0.9 }),
    );
  });

  it("go with no flock size, which is for one look in parts", () => {
    const choice = { confidence: 0.95, flockSize: 100 };
    expect(prevalenceRange([1, 2], [12, 8], choice)).toEqual({ low: 0.05, high: 0.35 });
    expect(() => prevalenceRange([1, 2], [12, 8], { ...choice, spread: "gathers" })).toThrow(
      /^spread: "gathers" is for/,
    );
    expect(() => prevalenceRange([1, 2], [12, 8], { ...choice, dates: [46000, 46030] })).toThrow(/^dates: flock_size/);
    expect(prevalenceRange([1, 2], [12, 8], { ...choice, dates: [46000, 46000] })).toEqual({ low: 0.05, high: 0.35 });
  });
});

describe("a target over several gathers", () => {
  it("counts the gathers still needed, and settles with that many", () => {
    const answer = targetCheck([2, 5, 3, 2], [100, 100, 100, 100], { target: 0.05, confidence: 0.95 });
    const more = Number(/^not settled yet: about (\d+) more gathers like these$/.exec(answer)?.[1]);
    expect(more).toBeGreaterThan(4);
    const again = (count: number) => Array.from({ length: count }, (_, index) => [2, 5, 3, 2][index % 4] ?? 0);
    const after = (count: number) =>
      targetCheck(again(count), Array<number>(count).fill(100), { target: 0.05, confidence: 0.95 });
    // The supposed spread loses weight with every gather, so that fewer may be enough; twice as many surely are.
    expect(after(4 + 2 * more)).toBe("below target");
  });

  it("says so when the share is the target", () => {
    expect(targetCheck([5, 5], [100, 100], { target: 0.05, confidence: 0.95 })).toMatch(
      /^not settled: the share seen is/,
    );
    expect(targetCheck([50, 51], [1000, 1000], { target: 0.05, confidence: 0.95 })).toMatch(/^not settled: /);
  });
});

describe("groups over several gathers", () => {
  it("have the range of their own rows", () => {
    const [ewes, , all] = prevalenceByGroup(["ewes", "lambs", "ewes", "lambs"], [4, 1, 9, 2], [100, 30, 110, 40], {
      confidence: 0.95,
      dates: [46000, 46000, 46030, 46030],
    });
    expect(ewes).toMatchObject(prevalenceRange([4, 9], [100, 110], { confidence: 0.95 }));
    expect(all).toMatchObject(prevalenceRange([5, 11], [130, 150], { confidence: 0.95 }));
  });
});

describe("a trend over gathers", () => {
  it("is surer by chance alone", () => {
    const call = (spread: "gathers" | "chance") =>
      prevalenceTrend([46000, 46030, 46060, 46090], [10, 3, 9, 2], [100, 100, 100, 100], spread).p;
    expect(call("chance")).toBeLessThan(call("gathers"));
  });
});
