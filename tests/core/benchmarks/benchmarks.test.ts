import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { betaBinomialFit } from "../../../src/core/benchmarks/betaBinomialFit.ts";
import { flockRank } from "../../../src/core/benchmarks/flockRank.ts";
import { flockSpread } from "../../../src/core/benchmarks/flockSpread.ts";
import { funnel } from "../../../src/core/benchmarks/funnel.ts";
import { funnelLimit } from "../../../src/core/benchmarks/funnelLimit.ts";
import { shrunkPrevalence } from "../../../src/core/benchmarks/shrunkPrevalence.ts";
import { wilsonInterval } from "../../../src/core/prevalence/wilsonInterval.ts";
import { expectNear } from "../near.ts";
import { problemOf } from "../problemOf.ts";
import { cases, references } from "../references.ts";

// Made by tests/references/benchmarking/make.py.
const values = references("benchmarking");

const names = (count: number): string[] => Array.from({ length: count }, (_, place) => `flock ${place}`);
const manyFlocks = (count: number) => {
  const seen = Array.from({ length: count }, (_, place) => 20 + ((place * 7919) % 900));
  const lame = seen.map((n, place) => Math.floor(n * (0.01 + ((place * 31) % 97) / 1000)));
  return [names(count), lame, seen] as const;
};

describe("flockRank", () => {
  // By hand: below 0.05 and 0.08 and level with 0.03, (2 + ½) / 4 = 0.625; above 0.02 alone, (1 + ½) / 4 = 0.375.
  it("counts the flocks done better than, ties half", () => {
    expect(flockRank(0.03, [0.02, 0.03, 0.05, 0.08], true)).toBe(0.625);
    expect(flockRank(0.03, [0.02, 0.03, 0.05, 0.08], false)).toBe(0.375);
    expect(flockRank(1, [2], true)).toBe(1);
    expect(flockRank(3, [2], true)).toBe(0);
  });

  it("the two directions add up to one", () => {
    const value = fc.integer({ min: 0, max: 5 });
    fc.assert(
      fc.property(value, fc.array(value, { minLength: 1 }), (own, others) => {
        expect(flockRank(own, others, true) + flockRank(own, others, false)).toBeCloseTo(1, 12);
      }),
    );
  });

  it("reports nothing without another flock", () => {
    expect(problemOf(() => flockRank(1, [], true)).code).toBe("#N/A");
  });
});

describe("funnel", () => {
  // Spiegelhalter 2005, A.1.1.
  it("agrees with the reference values", () => {
    for (const [[p, n, target], limit] of cases<[number, number, number], number>(values, "funnel")) {
      // scipy's own quotient of a small difference sets the limit for the largest flocks.
      expectNear(funnelLimit(p, n, target), limit, n > 500 ? 1e-8 : 1e-10, `${p} ${n} ${target}`);
    }
  });

  it("puts each flock into words", () => {
    const rows = funnel(["A", "B", "C", "D", "E", "F"], [20, 40, 100, 12, 0, 0], [400, 520, 500, 420, 500, 0], 0.05);
    expect(rows.map(({ flock, word }) => [flock, word])).toEqual([
      ["A", "within the limits"],
      ["B", "above the 95 % limit"],
      ["C", "above the 99.8 % limit"],
      ["D", "below the 95 % limit"],
      ["E", "below the 99.8 % limit"],
      ["F", "no sheep seen"],
    ]);
  });

  it("adds up the rows of a flock, and takes the pooled share unless told", () => {
    const rows = funnel(["A", "a ", "B"], [1, 2, 12], [50, 50, 200]);
    expect(rows.map(({ flock, seen, share }) => [flock, seen, share])).toEqual([
      ["A", 100, 0.03],
      ["B", 200, 0.06],
    ]);
    expect(rows[0]?.low95).toBe(funnelLimit(0.025, 100, 15 / 300));
  });

  it("copes with flocks that have none lame, or where none at all are", () => {
    expect(funnel(["A", "B"], [0, 0], [40, 50]).map(({ word }) => word)).toEqual([
      "within the limits",
      "within the limits",
    ]);
    expect(funnel(["A", "B"], [0, 5], [10, 50])[0]?.word).toBe("within the limits");
    expect(funnel(["A", "B"], [10, 50], [10, 50]).map(({ word }) => word)).toEqual([
      "within the limits",
      "within the limits",
    ]);
  });

  it("refuses one flock alone, unless there is a target", () => {
    expect(problemOf(() => funnel(["A"], [1], [20])).message).toContain(
      "one flock alone cannot be compared with itself",
    );
    expect(funnel(["A"], [1], [20], 0.05)[0]?.word).toBe("within the limits");
    expect(problemOf(() => funnel(["A", "B"], [1, 0], [20, 0])).place.argument).toBe("flocks");
    expect(funnel(["A", "B"], [1, 0], [20, 0], 0.05).map(({ word }) => word)).toEqual([
      "within the limits",
      "no sheep seen",
    ]);
    expect(problemOf(() => funnel(["A", "B"], [1, 9], [20, 8])).place).toEqual({ argument: "lame", index: 1 });
    expect(problemOf(() => funnel(["A", "B"], [0, 0], [0, 0])).code).toBe("#N/A");
  });

  // The width falls with the root of the flock: 16 times the sheep, a quarter of it. Counted in sheep of the smaller
  // flock, the limits step by one sheep there and by a quarter of one in the larger.
  it("the limits close in on the target as flocks grow", () => {
    const target = fc.double({ min: 0.005, max: 0.5, noNaN: true });
    fc.assert(
      fc.property(target, fc.integer({ min: 1, max: 5000 }), (share, n) => {
        const width = (sheep: number) => funnelLimit(0.975, sheep, share) - funnelLimit(0.025, sheep, share);
        expect(Math.abs(4 * width(16 * n) - width(n)) * n).toBeLessThan(1 + 1 / 4);
        expect(funnelLimit(0.999, n, share)).toBeGreaterThanOrEqual(funnelLimit(0.975, n, share));
        expect(funnelLimit(0.001, n, share)).toBeLessThanOrEqual(funnelLimit(0.025, n, share));
      }),
    );
  });

  it("charts each of 10,000 flocks by its own size", () => {
    const [flocks, lame, seen] = manyFlocks(10_000);
    const rows = funnel(flocks, lame, seen, 0.05);
    expect(rows).toHaveLength(10_000);
    for (const place of [0, 4999, 9999]) expect(rows[place]?.high95).toBe(funnelLimit(0.975, seen[place] ?? 0, 0.05));
  });
});

// lme4's cbpp table (an R package's data), summed by herd: new cases and animals seen.
const cases15 = [9, 5, 12, 4, 6, 4, 12, 12, 2, 4, 9, 3, 3, 11, 3];
const animals15 = [40, 61, 74, 35, 71, 72, 40, 34, 29, 84, 96, 29, 87, 26, 64];

describe("beta-binomial fit", () => {
  // VGAM's betabinomialff on the same table.
  it("15 herds", () => {
    const { share, spread } = betaBinomialFit(cases15.map((lame, place) => ({ lame, seen: animals15[place] ?? 0 })));
    expectNear(share / spread, 1.95927, 5e-6);
    expectNear((1 - share) / spread, 11.98706, 5e-6);
  });

  it("finds no spread where flocks differ no more than chance makes them", () => {
    expect(
      betaBinomialFit([
        { lame: 5, seen: 100 },
        { lame: 6, seen: 110 },
      ]),
    ).toEqual({ share: 11 / 210, spread: 0 });
    expect(
      betaBinomialFit([
        { lame: 0, seen: 9 },
        { lame: 0, seen: 8 },
      ]),
    ).toEqual({ share: 0, spread: 0 });
    expect(
      betaBinomialFit([
        { lame: 1, seen: 1 },
        { lame: 0, seen: 1 },
      ]),
    ).toEqual({ share: 0.5, spread: 0 });
  });
});

describe("shrunkPrevalence", () => {
  it("agrees with the reference values", () => {
    type Steadied = [[share: number, spread: number], [number, number, number][]];
    for (const [[lame, seen, c], [[share, spread], rows]] of cases<[number[], number[], number], Steadied>(
      values,
      "steadied",
    )) {
      const fit = betaBinomialFit(lame.map((x, place) => ({ lame: x, seen: seen[place] ?? 0 })));
      const what = `${lame.length} flocks, ${c}`;
      expectNear(fit.share, share, 1e-8, `${what} share`);
      expectNear(fit.spread, spread, 1e-8, `${what} spread`);
      shrunkPrevalence(names(lame.length), lame, seen, c).forEach(({ steadied, low, high }, place) => {
        const expected = rows[place] ?? [NaN, NaN, NaN];
        expectNear(steadied, expected[0], 1e-8, `${what} steadied ${place}`);
        expectNear(low, expected[1], 1e-8, `${what} low ${place}`);
        expectNear(high, expected[2], 1e-8, `${what} high ${place}`);
      });
    }
  });

  it("draws every share towards the mean, the smaller the flock the more", () => {
    const rows = shrunkPrevalence(["A", "B", "C", "D"], [0, 30, 3, 0], [10, 200, 200, 200], 0.95);
    expect(rows[0]?.steadied).toBeGreaterThan(rows[3]?.steadied ?? NaN);
    expect(rows[1]?.steadied).toBeLessThan(0.15);
    expect(rows.map(({ rank }) => rank)).toEqual([3, 4, 2, 1]);
  });

  it("gives every flock the pooled share where they do not differ, with its interval", () => {
    const { low, high } = wilsonInterval(4, 80, 0.9);
    expect(shrunkPrevalence(["A", "B"], [2, 2], [40, 40], 0.9)).toEqual([
      { flock: "A", share: 0.05, steadied: 0.05, low, high, rank: 1 },
      { flock: "B", share: 0.05, steadied: 0.05, low, high, rank: 1 },
    ]);
    expect(shrunkPrevalence(["A", "B"], [0, 0], [40, 40], 0.9)[0]).toMatchObject({ steadied: 0, low: 0 });
  });

  it("steadies a flock of which none were seen to the mean", () => {
    const rows = shrunkPrevalence(["A", "B", "C"], [0, 20, 0], [50, 50, 0], 0.95);
    expect(rows[2]?.share).toBeUndefined();
    const fit = betaBinomialFit([
      { lame: 0, seen: 50 },
      { lame: 20, seen: 50 },
      { lame: 0, seen: 0 },
    ]);
    expectNear(rows[2]?.steadied ?? NaN, fit.share, 1e-12);
  });

  it("refuses one flock alone; reports nothing where every flock has none or all lame", () => {
    expect(problemOf(() => shrunkPrevalence(["A"], [1], [20], 0.95)).place.argument).toBe("flocks");
    expect(problemOf(() => shrunkPrevalence(["A", "B"], [1, 0], [20, 0], 0.95)).place.argument).toBe("flocks");
    expect(problemOf(() => shrunkPrevalence(["A", "B"], [0, 9], [20, 9], 0.95)).code).toBe("#N/A");
  });

  it("limits hold the steadied share, and the order of rows does not matter", () => {
    const flock = fc
      .integer({ min: 1, max: 200 })
      .chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));
    fc.assert(
      fc.property(fc.array(flock, { minLength: 2, maxLength: 25 }), (flocks) => {
        fc.pre(flocks.some(([x, n]) => x > 0 && x < n));
        const labels = names(flocks.length);
        const rows = shrunkPrevalence(
          labels,
          flocks.map(([x]) => x),
          flocks.map(([, n]) => n),
          0.95,
        );
        for (const { low, steadied, high } of rows) {
          expect(low).toBeLessThanOrEqual(steadied);
          expect(high).toBeGreaterThanOrEqual(steadied);
        }
        const back = [...flocks].reverse();
        const other = shrunkPrevalence(
          [...labels].reverse(),
          back.map(([x]) => x),
          back.map(([, n]) => n),
          0.95,
        );
        [...other].reverse().forEach(({ flock: name, steadied }, place) => {
          expect(name).toBe(rows[place]?.flock);
          expectNear(steadied, rows[place]?.steadied ?? NaN, 1e-7);
        });
      }),
    );
  });

  // The posterior mean: the flock's own count on top of the fitted distribution's.
  it("steadies each of 10,000 flocks by its own count", () => {
    const [flocks, lame, seen] = manyFlocks(10_000);
    const rows = shrunkPrevalence(flocks, lame, seen, 0.95);
    const { share, spread } = betaBinomialFit(lame.map((x, place) => ({ lame: x, seen: seen[place] ?? 0 })));
    expect(rows).toHaveLength(10_000);
    for (const place of [0, 4999, 9999])
      expectNear(
        rows[place]?.steadied ?? NaN,
        (share + spread * (lame[place] ?? 0)) / (1 + spread * (seen[place] ?? 0)),
        1e-12,
      );
  });
});

describe("flockSpread", () => {
  // Donner & Koval's estimator, the 15 herds among them.
  it("agrees with the reference values", () => {
    for (const [[lame, seen], [share, correlation, effect]] of cases<[number[], number[]], [number, number, number]>(
      values,
      "spread",
    )) {
      const found = flockSpread(lame, seen, 0.95);
      expectNear(found.share, share, 1e-12);
      expectNear(found.correlation, correlation, 1e-10, `${lame.length} flocks`);
      expectNear(found.designEffect, Math.max(effect, 1), 1e-10, `${lame.length} flocks`);
    }
  });

  it("leaves out flocks of which none were seen", () => {
    expect(flockSpread([1, 0, 8], [10, 0, 10], 0.95)).toEqual(flockSpread([1, 8], [10, 10], 0.95));
  });

  it("refuses one flock alone, and reports nothing where nothing can be said", () => {
    expect(problemOf(() => flockSpread([1], [20], 0.95)).message).toContain("one flock alone");
    expect(problemOf(() => flockSpread([0, 0], [20, 30], 0.95)).code).toBe("#N/A");
    expect(problemOf(() => flockSpread([20, 30], [20, 30], 0.95)).code).toBe("#N/A");
    expect(problemOf(() => flockSpread([1, 0], [1, 1], 0.95)).code).toBe("#N/A");
  });
});
