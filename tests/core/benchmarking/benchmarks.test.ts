import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { flockRank } from "../../../src/core/benchmarking/flockRank.ts";
import { flockRanks } from "../../../src/core/benchmarking/flockRanks.ts";
import { flockSpread } from "../../../src/core/benchmarking/flockSpread.ts";
import { flocksDiffer } from "../../../src/core/benchmarking/flocksDiffer.ts";
import { funnel } from "../../../src/core/benchmarking/funnel.ts";
import { funnelLimit } from "../../../src/core/benchmarking/funnelLimit.ts";
import { shrunkPrevalence } from "../../../src/core/benchmarking/shrunkPrevalence.ts";
import { betaBinomialCounts } from "../../../src/core/statistics/betaBinomialCounts.ts";
import { betaBinomialFit } from "../../../src/core/statistics/betaBinomialFit.ts";
import { betaQuantile } from "../../../src/core/statistics/betaQuantile.ts";
import { binomialDensity } from "../../../src/core/statistics/binomialDensity.ts";
import { correlationRange } from "../../../src/core/statistics/correlationRange.ts";
import { flockTallies } from "../../../src/core/statistics/flockTallies.ts";
import { gaussLegendre } from "../../../src/core/statistics/gaussLegendre.ts";
import { likeliestShare } from "../../../src/core/statistics/likeliestShare.ts";
import { mixtureQuantile } from "../../../src/core/statistics/mixtureQuantile.ts";
import { risingSums } from "../../../src/core/statistics/risingSums.ts";
import { spreadPosterior } from "../../../src/core/statistics/spreadPosterior.ts";
import { expectNear } from "../near.ts";
import { problemOf } from "../problemOf.ts";
import { cases, ownReferences } from "../references.ts";

// Made by tests/references/benchmarking/make.py.
const values = ownReferences(import.meta.url);

const names = (count: number): string[] => Array.from({ length: count }, (_, index) => `flock ${index}`);
const manyFlocks = (count: number) => {
  const seen = Array.from({ length: count }, (_, index) => 20 + ((index * 7919) % 900));
  const lame = seen.map((n, index) => Math.floor(n * (0.01 + ((index * 31) % 97) / 1000)));
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

  // Both binomial tails in fractions of whole numbers.
  it("words agree with the exact tails", () => {
    for (const [[x, n, target], word] of cases<[number, number, number], string>(values, "words"))
      expect(funnel(["A"], [x], [n], target)[0]?.word, `${x} of ${n}, ${target}`).toBe(word);
  });

  it("calls no more flocks out by chance than the limit says, however small they are", () => {
    for (const n of [1, 2, 3, 5, 8, 13, 21, 34, 55, 89, 144])
      for (const target of [0.01, 0.03, 0.05, 0.1, 0.3]) {
        const outside = (word: string) =>
          Array.from({ length: n + 1 }, (_, x) =>
            funnel(["A"], [x], [n], target)[0]?.word.startsWith(word) ? binomialDensity(x, n, target) : 0,
          ).reduce((sum, chance) => sum + chance, 0);
        expect(outside("above"), `${n}, ${target}`).toBeLessThanOrEqual(0.025 + 1e-12);
        expect(outside("above the 99.8 %"), `${n}, ${target}`).toBeLessThanOrEqual(0.001 + 1e-12);
        expect(outside("below"), `${n}, ${target}`).toBeLessThanOrEqual(0.025 + 1e-12);
      }
  });

  it("allows for flocks that differ where asked", () => {
    for (const [[lame, seen, target], correlations] of cases<[number[], number[], number], number[]>(
      values,
      "differ",
    )) {
      const flocks = lame.map((x, index) => ({ lame: x, seen: seen[index] ?? 0 }));
      const found = flocksDiffer(flocks, target);
      expect(found).toHaveLength(correlations.length);
      correlations.forEach((correlation, step) => {
        expectNear(found[step] ?? NaN, correlation, 1e-10, `${lame.length} flocks, ${target}, step ${step}`);
      });
    }
    for (const [[lame, seen, target], words] of cases<[number[], number[], number], string[]>(values, "widened")) {
      expect(funnel(names(lame.length), lame, seen, target, true).map(({ word }) => word)).toEqual(words);
    }
    const [flocks, lame, seen] = [names(6), [2, 45, 10, 0, 30, 4], [100, 500, 300, 200, 250, 100]];
    const [narrow, wide] = [funnel(flocks, lame, seen, 0.05), funnel(flocks, lame, seen, 0.05, true)];
    wide.forEach(({ high95, low95 }, index) => {
      expect(high95).toBeGreaterThan(narrow[index]?.high95 ?? NaN);
      expect(low95).toBeLessThanOrEqual(narrow[index]?.low95 ?? NaN);
    });
    expect(narrow.filter(({ word }) => word !== "within the limits").length).toBeGreaterThan(2);
    expect(wide.map(({ word }) => word)).toEqual(Array(6).fill("within the limits"));
  });

  it("limits go on smoothly where sheep are no longer counted one by one, quickly for a million", () => {
    const others = [2, 45, 10, 0, 30, 4, 12, 40, 9, 22];
    const at = (n: number) =>
      funnel(
        names(11),
        [...others, Math.round(0.2 * n)],
        [100, 500, 300, 200, 250, 100, 90, 400, 300, 310, n],
        0.05,
        true,
      )[10];
    const [below, above] = [at(20_000), at(20_001)];
    for (const key of ["low95", "high95", "low998", "high998"] as const)
      expect(Math.abs((below?.[key] ?? NaN) - (above?.[key] ?? NaN)), key).toBeLessThan(2 / 20_000);
    expect(above?.word).toBe(below?.word);
    expect(at(1_000_000)?.high95).toBeLessThan(above?.high95 ?? NaN);
    for (const lame of [0, 1_000_000])
      expect(funnel(["A", "B"], [lame, 3], [1_000_000, 50], 0.05, true)[0]?.word).toBeTypeOf("string");
  });

  it("flocks that do not differ get the usual limits", () => {
    const same = [names(4), [5, 5, 5, 5], [100, 100, 100, 100]] as const;
    expect(funnel(...same, undefined, true)).toEqual(funnel(...same));
    expect(problemOf(() => funnel(["A"], [1], [20], 0.05, true)).place.argument).toBe("flocks");
  });

  // scipy.stats.betabinom.
  it("tails of flocks that differ agree with the reference values", () => {
    type Tails = [x: number, n: number, share: number, correlation: number];
    for (const [[x, n, share, rho], [lower, upper]] of cases<Tails, [number, number]>(values, "tails")) {
      const found = betaBinomialCounts(n, share, rho);
      expectNear(found.lower[x] ?? NaN, lower, 1e-8, `${x} of ${n}, ${share}, ${rho} lower`);
      expectNear(found.upper[x] ?? NaN, upper, 1e-8, `${x} of ${n}, ${share}, ${rho} upper`);
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
    for (const index of [0, 4999, 9999]) expect(rows[index]?.high95).toBe(funnelLimit(0.975, seen[index] ?? 0, 0.05));
  });
});

// lme4's cbpp table (an R package's data), summed by herd: new cases and animals seen.
const cases15 = [9, 5, 12, 4, 6, 4, 12, 12, 2, 4, 9, 3, 3, 11, 3];
const animals15 = [40, 61, 74, 35, 71, 72, 40, 34, 29, 84, 96, 29, 87, 26, 64];

describe("beta-binomial fit", () => {
  // VGAM's betabinomialff on the same table.
  it("15 herds", () => {
    const { share, spread } = betaBinomialFit(cases15.map((lame, index) => ({ lame, seen: animals15[index] ?? 0 })));
    expectNear(share / spread, 1.95927, 5e-6);
    expectNear((1 - share) / spread, 11.98706, 5e-6);
  });

  // scipy gets near, mpmath's Newton in 40 digits gets there.
  it("agrees with the reference values", () => {
    for (const [[lame, seen], [share, spread]] of cases<[number[], number[]], [number, number]>(values, "fit")) {
      const found = betaBinomialFit(lame.map((x, index) => ({ lame: x, seen: seen[index] ?? 0 })));
      expectNear(found.share, share, 1e-8, `${lame.length} flocks share`);
      expectNear(found.spread, spread, 1e-8, `${lame.length} flocks spread`);
    }
  });

  const gainOf = (flocks: readonly { lame: number; seen: number }[]) => {
    const { spread } = betaBinomialFit(flocks);
    const tally = flockTallies(flocks);
    return likeliestShare(tally, spread).logLikelihood - likeliestShare(tally, 0).logLikelihood;
  };

  // The likelihood falls as the spread leaves 0, and rises again further out.
  it("finds the top that does not begin at no spread", () => {
    const [lame, seen] = [
      [0, 92, 0, 47, 0],
      [60, 800, 20, 400, 20],
    ];
    const flocks = lame.map((x, index) => ({ lame: x, seen: seen[index] ?? 0 }));
    expect(betaBinomialFit(flocks).spread).toBeCloseTo(0.133, 3);
    expect(gainOf(flocks)).toBeCloseTo(4, 1);
  });

  // scipy over a fine grid of spreads, flocks of very unlike sizes. Run by hand over 10,000 sets: see docs/methods.
  it("finds a likelihood no lower than any on a fine grid", () => {
    for (const [[lame, seen], [, gain]] of cases<[number[], number[]], [number, number]>(values, "highest")) {
      const found = gainOf(lame.map((x, index) => ({ lame: x, seen: seen[index] ?? 0 })));
      expect(found, `${lame} of ${seen}`).toBeGreaterThanOrEqual(gain - 1e-6);
      // The grid is fine enough to come within a hundredth of the top.
      expect(found, `${lame} of ${seen}`).toBeLessThan(gain + 0.02);
    }
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
  // scipy: averaged over a dense product grid of means and spreads; its own grid sets the limit.
  it("agrees with the reference values", () => {
    type Rows = [mean: number, low: number, high: number][];
    for (const [[lame, seen, c], rows] of cases<[number[], number[], number], Rows>(values, "posterior")) {
      shrunkPrevalence(names(lame.length), lame, seen, c).forEach(({ steadied, low, high }, index) => {
        const [mean, least, most] = rows[index] ?? [NaN, NaN, NaN];
        const what = `${lame} of ${seen}, ${c}, ${index}`;
        expectNear(steadied, mean, 1e-5, `${what} steadied`);
        // Where the lower tail lies in what no sheep could tell from 0, its digits mean nothing.
        expect(Math.abs(low - least), `${what} low`).toBeLessThan(1e-6 + 3e-4 * least);
        expectNear(high, most, 1e-4, `${what} high`);
      });
    }
  });

  it("draws every share towards the mean, the smaller the flock the more", () => {
    const rows = shrunkPrevalence(["A", "B", "C", "D"], [0, 30, 3, 0], [10, 200, 200, 200], 0.95);
    expect(rows[0]?.steadied).toBeGreaterThan(rows[3]?.steadied ?? NaN);
    expect(rows[1]?.steadied).toBeLessThan(0.15);
    expect(rows.map(({ rank }) => rank)).toEqual([3, 4, 2, 1]);
  });

  it("none lame in any flock is never read as no lame sheep", () => {
    for (const { steadied, high } of shrunkPrevalence(["A", "B"], [0, 0], [40, 40], 0.9)) {
      expect(steadied).toBeGreaterThan(0);
      expect(high).toBeGreaterThan(0.01);
    }
  });

  it("a flock of which none were seen has the widest range and stands nowhere", () => {
    const rows = shrunkPrevalence(["A", "B", "C", "D", "E"], [1, 20, 4, 9, 0], [50, 50, 50, 50, 0], 0.95);
    expect(rows[4]).toMatchObject({ share: undefined, lowRank: 1, highRank: 5, word: "not told apart" });
    const width = ({ low, high }: { low: number; high: number }) => high - low;
    for (const other of rows.slice(0, 4)) expect(width(other)).toBeLessThan(width(rows[4] ?? other));
  });

  it("refuses one flock alone, and a flock too large to be one; takes flocks with none or all lame", () => {
    expect(problemOf(() => shrunkPrevalence(["A"], [1], [20], 0.95)).place.argument).toBe("flocks");
    expect(problemOf(() => shrunkPrevalence(["A", "B"], [1, 0], [20, 0], 0.95)).place.argument).toBe("flocks");
    expect(problemOf(() => shrunkPrevalence(["A", "B"], [1, 0], [20, 2e6], 0.95)).place.argument).toBe("seen");
    const [none, all] = shrunkPrevalence(["A", "B"], [0, 9], [20, 9], 0.95);
    expect(none?.steadied).toBeLessThan(0.1);
    expect(all?.steadied).toBeGreaterThan(0.8);
  });

  it("limits hold the steadied share, ranks their range, and the order of rows does not matter", () => {
    const flock = fc
      .integer({ min: 1, max: 200 })
      .chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));
    fc.assert(
      fc.property(fc.array(flock, { minLength: 2, maxLength: 6 }), (flocks) => {
        const labels = names(flocks.length);
        const of = (order: typeof flocks, words: readonly string[]) =>
          shrunkPrevalence(
            words,
            order.map(([x]) => x),
            order.map(([, n]) => n),
            0.95,
          );
        const rows = of(flocks, labels);
        for (const { low, steadied, high, rank, lowRank, highRank } of rows) {
          expect(low).toBeLessThanOrEqual(steadied);
          expect(high).toBeGreaterThanOrEqual(steadied);
          expect(lowRank).toBeGreaterThanOrEqual(1);
          expect(lowRank).toBeLessThanOrEqual(rank);
          expect(highRank).toBeGreaterThanOrEqual(rank);
          expect(highRank).toBeLessThanOrEqual(flocks.length);
        }
        const other = of([...flocks].reverse(), [...labels].reverse());
        [...other].reverse().forEach(({ flock: name, steadied, lowRank, highRank }, index) => {
          expect(name).toBe(rows[index]?.flock);
          expectNear(steadied, rows[index]?.steadied ?? NaN, 1e-7);
          expect([lowRank, highRank]).toEqual([rows[index]?.lowRank, rows[index]?.highRank]);
        });
      }),
      { numRuns: 10, seed: 18 },
    );
  });

  // With hundreds of flocks the mean and spread are known so well that the answer is that of the fitted distribution.
  it("comes to the fitted distribution where flocks are many", () => {
    const [flocks, lame, seen] = manyFlocks(3000);
    const rows = shrunkPrevalence(flocks, lame, seen, 0.95);
    const { share, spread } = betaBinomialFit(lame.map((x, index) => ({ lame: x, seen: seen[index] ?? 0 })));
    for (const index of [0, 1499, 2999]) {
      const [x, n] = [lame[index] ?? 0, seen[index] ?? 0];
      expectNear(rows[index]?.steadied ?? NaN, (share + spread * x) / (1 + spread * n), 1e-3);
      const [a, b] = [share / spread + x, (1 - share) / spread + n - x];
      expectNear(rows[index]?.high ?? NaN, betaQuantile("upper", 0.025, a, b), 2e-3);
    }
  });

  // The same flocks with and without the step to one beta distribution for the mixture.
  it("one beta distribution stands for the mixture to a thousandth, where flocks are many", () => {
    const [, lame, seen] = manyFlocks(600);
    const flocks = lame.map((x, index) => ({ lame: x, seen: seen[index] ?? 0 }));
    const rows = shrunkPrevalence(names(600), lame, seen, 0.95);
    const possible = spreadPosterior(flocks).flatMap(({ means }) => means);
    for (const index of [0, 7, 299, 599]) {
      const [x, n] = [lame[index] ?? 0, seen[index] ?? 0];
      const parts = possible.map(({ a, b, weight }) => ({ a: a + x, b: b + n - x, weight }));
      expectNear(rows[index]?.high ?? NaN, mixtureQuantile("upper", 0.025, parts, 0.1), 1e-3);
      expectNear(rows[index]?.low ?? NaN, mixtureQuantile("lower", 0.025, parts, 0.1), 1e-3);
    }
  });
});

describe("the ranks that flocks may have", () => {
  // By hand: of two flocks known alike, each is first as often as second; of two far apart the order is sure.
  it("of two flocks", () => {
    expect(
      flockRanks(
        [
          { a: 5, b: 95 },
          { a: 5, b: 95 },
        ],
        0.9,
      ),
    ).toEqual([
      { low: 1, high: 2 },
      { low: 1, high: 2 },
    ]);
    expect(
      flockRanks(
        [
          { a: 5, b: 995 },
          { a: 500, b: 500 },
        ],
        0.95,
      ),
    ).toEqual([
      { low: 1, high: 1 },
      { low: 2, high: 2 },
    ]);
  });

  // Of N flocks all alike every rank is equally likely: at 80 in 100, ranks above a tenth and up to nine tenths.
  // The grid of shares makes two ranks of a chance that is met exactly.
  it.each([20, 200])("of %i flocks all alike", (flocks) => {
    for (const { low, high } of flockRanks(Array(flocks).fill({ a: 4, b: 76 }), 0.8)) {
      expect(Math.abs(low - flocks / 10)).toBeLessThanOrEqual(1);
      expect(Math.abs(high - (9 * flocks) / 10)).toBeLessThanOrEqual(1);
    }
  });

  it("more than 200 flocks: near to what the exact sum gives for 200", () => {
    const beliefs = (count: number) => Array.from({ length: count }, (_, k) => ({ a: 2 + (k % 20), b: 98 - (k % 20) }));
    const [exact, rough] = [flockRanks(beliefs(200), 0.95), flockRanks(beliefs(220), 0.95)];
    for (let k = 0; k < 20; k++) {
      expect(Math.abs((exact[k]?.low ?? NaN) / 200 - (rough[k]?.low ?? NaN) / 220)).toBeLessThan(0.02);
      expect(Math.abs((exact[k]?.high ?? NaN) / 200 - (rough[k]?.high ?? NaN) / 220)).toBeLessThan(0.02);
    }
  });
});

describe("gaussLegendre", () => {
  // Exact for polynomials to the degree 2n − 1: the integral of x^k from −1 to 1 is 2 / (k + 1) for even k.
  it.each([2, 5, 28])("%i places", (n) => {
    const sum = (k: number) => gaussLegendre(n).reduce((total, [x, weight]) => total + weight * x ** k, 0);
    for (let k = 0; k < 2 * n; k++) expect(sum(k)).toBeCloseTo(k % 2 === 0 ? 2 / (k + 1) : 0, 12);
  });
});

describe("risingSums", () => {
  it.each([
    [0.05, 0.3, 1000],
    [0.01, 5, 20_000],
    [1, 1e-9, 20_000],
    [1e-4, 1e4, 5000],
  ])("base %f, spread %f, %i places: as added up one by one", (base, spread, places) => {
    const found = risingSums([{ from: 0, to: places, flocks: 2 }], base, spread);
    let [logs, inverses, squares] = [0, 0, 0];
    for (let j = 0; j < places; j++) {
      logs += 2 * Math.log(base + j * spread);
      inverses += 2 / (base + j * spread);
      squares += 2 / (base + j * spread) ** 2;
    }
    expectNear(found.logs, logs, 1e-10);
    expectNear(found.inverses, inverses, 1e-11);
    expectNear(found.squares, squares, 1e-11);
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

  // scipy: profile likelihood over a fine grid, cut at half a squared t value.
  it("its range agrees with the reference values", () => {
    type Counts = [number[], number[], number];
    for (const [[lame, seen, c], [low, high]] of cases<Counts, [number, number]>(values, "profile")) {
      if (lame.every((x) => x === 0)) continue;
      const found = correlationRange(
        lame.map((x, index) => ({ lame: x, seen: seen[index] ?? 0 })),
        c,
      );
      expect(Math.abs(found.low - low), `${lame} of ${seen}, ${c} low`).toBeLessThan(5e-5);
      expect(Math.abs(found.high - high), `${lame} of ${seen}, ${c} high`).toBeLessThan(5e-5);
    }
  });

  it("a design effect is never below 1, and its range holds it", () => {
    const flock = fc
      .integer({ min: 2, max: 90 })
      .chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));
    fc.assert(
      fc.property(fc.array(flock, { minLength: 2, maxLength: 12 }), (flocks) => {
        const [lame, seen] = [flocks.map(([x]) => x), flocks.map(([, n]) => n)];
        fc.pre(lame.some((x) => x > 0) && flocks.some(([x, n]) => x < n));
        const { designEffect, lowEffect, highEffect } = flockSpread(lame, seen, 0.95);
        expect(lowEffect).toBeGreaterThanOrEqual(1);
        expect(designEffect).toBeGreaterThanOrEqual(lowEffect);
        expect(highEffect).toBeGreaterThanOrEqual(designEffect);
      }),
      { numRuns: 40, seed: 18 },
    );
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
