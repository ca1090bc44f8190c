import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { betaQuantile } from "../../../src/core/statistics/betaQuantile.ts";
import { betaTails } from "../../../src/core/statistics/betaTails.ts";
import { binomialDensity } from "../../../src/core/statistics/binomialDensity.ts";
import { binomialQuantile } from "../../../src/core/statistics/binomialQuantile.ts";
import { binomialTails } from "../../../src/core/statistics/binomialTails.ts";
import { binomialTwoSided } from "../../../src/core/statistics/binomialTwoSided.ts";
import { gammaQuantile } from "../../../src/core/statistics/gammaQuantile.ts";
import { gammaTails } from "../../../src/core/statistics/gammaTails.ts";
import { hypergeometricDensity } from "../../../src/core/statistics/hypergeometricDensity.ts";
import { hypergeometricTails } from "../../../src/core/statistics/hypergeometricTails.ts";
import { normalScore } from "../../../src/core/statistics/normalScore.ts";
import { normalTwoSided } from "../../../src/core/statistics/normalTwoSided.ts";
import { stirlingError } from "../../../src/core/statistics/stirlingError.ts";
import { expectNear } from "../near.ts";
import { cases, ownReferences } from "../references.ts";

// Made by tests/references/statistics/make.py in 40-digit arithmetic.
const values = ownReferences(import.meta.url);

/** Only the smaller tail keeps its relative accuracy; the larger is one less it. */
const smallerNear = (found: readonly number[], expected: readonly number[], relative: number, what: string): void => {
  const place = (expected[0] ?? 0) < (expected[1] ?? 0) ? 0 : 1;
  expectNear(found[place] ?? NaN, expected[place] ?? NaN, relative, what);
  expect(Math.abs((found[1 - place] ?? NaN) - (expected[1 - place] ?? NaN)), what).toBeLessThan(1e-12);
};

describe("against the reference values", () => {
  it("binomial density", () => {
    for (const [[x, n, p], density] of cases<[number, number, number], number>(values, "binomial")) {
      // The logarithm of a very small density is large, and its last digit counts.
      const relative = 1e-13 + 1e-15 * Math.abs(Math.log(density));
      expectNear(binomialDensity(x, n, p), density, relative, `${x} of ${n}, ${p}`);
    }
  });

  it("hypergeometric density and tails", () => {
    type Draw = [number, number, number, number];
    for (const [[x, N, M, n], [density, lower, upper]] of cases<Draw, [number, number, number]>(
      values,
      "hypergeometric",
    )) {
      const what = `${x} of ${N} ${M} ${n}`;
      const found = hypergeometricTails(x, { N, M, n });
      expectNear(hypergeometricDensity(x, { N, M, n }), density, 1e-12, what);
      smallerNear([found.lower, found.upper], [lower, upper], 1e-12, what);
    }
  });

  it("beta tails", () => {
    for (const [[x, a, b], expected] of cases<[number, number, number], [number, number]>(values, "beta")) {
      const { lower, upper } = betaTails(x, a, b);
      smallerNear([lower, upper], expected, 1e-12, `${x} ${a} ${b}`);
    }
  });

  it("gamma tails", () => {
    for (const [[x, a], expected] of cases<[number, number], [number, number]>(values, "gamma")) {
      const { lower, upper } = gammaTails(x, a);
      smallerNear([lower, upper], expected, 1e-12, `${x} ${a}`);
    }
  });

  // ln Γ(z + 1) − ((z + ½) ln z − z + ½ ln 2π): R 4.2 stats, lgamma, at z where it loses no digits.
  it("Stirling's error", () => {
    expectNear(stirlingError(1), 0.0810614667953272, 1e-13);
    expectNear(stirlingError(0.5), 0.153426409720027, 1e-13);
    expectNear(stirlingError(15.7), stirlingError(15.7 + 1e-9), 1e-9);
    expectNear(stirlingError(15.999999999), stirlingError(16), 1e-9);
  });

  // R 4.2 stats, qnorm.
  it("normal scores", () => {
    expectNear(normalScore(0.5), 0.674489750196082, 1e-14);
    expectNear(normalScore(0.95), 1.95996398454005, 5e-15);
    expectNear(normalScore(0.998), 3.09023230616781, 5e-15);
    expectNear(normalScore(0.9999), 3.89059188641312, 5e-15);
    expectNear(normalScore(0.1), 0.125661346855074, 1e-14);
    expectNear(normalTwoSided(1.96), 0.0499957902964409, 1e-13);
    expect(normalTwoSided(0)).toBe(1);
  });
});

const chance = fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true });
const parameter = fc.double({ min: 0.05, max: 1e5, noNaN: true });
const sides = fc.constantFrom("lower" as const, "upper" as const);

describe("what must hold for any values", () => {
  it("a quantile of the beta distribution has that tail", () => {
    fc.assert(
      fc.property(sides, chance, parameter, parameter, (tail, p, a, b) => {
        const share = betaQuantile(tail, p, a, b);
        expect(share).toBeGreaterThanOrEqual(0);
        expect(share).toBeLessThanOrEqual(1);
        // A share so near to 1 that a computer cannot tell the rest cannot be put back.
        if (share < 1e-290 || share > 1 - 1e-6) return;
        expectNear(betaTails(share, a, b)[tail], p, 1e-8, `${tail} ${p} ${a} ${b}`);
      }),
    );
  });

  it("a quantile nearer to the end than the smallest number is the end", () => {
    expect(betaQuantile("lower", 0.025, 0.001, 5)).toBe(0);
    expect(betaQuantile("upper", 0.025, 5, 0.001)).toBe(1);
  });

  it("a quantile of the gamma distribution has that tail", () => {
    fc.assert(
      fc.property(sides, chance, fc.double({ min: 0.5, max: 1e6, noNaN: true }), (tail, p, a) => {
        expectNear(gammaTails(gammaQuantile(tail, p, a), a)[tail], p, 1e-9, `${tail} ${p} ${a}`);
      }),
    );
  });

  it("a binomial quantile is the first count that reaches the chance", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e5 }), chance, chance, (n, p, share) => {
        const { count } = binomialQuantile(p, n, share);
        expect(binomialTails(count, n, share).lower).toBeGreaterThanOrEqual(p - 1e-12);
        expect(binomialTails(count - 1, n, share).lower).toBeLessThan(p + 1e-12);
      }),
    );
  });

  // R 4.2 stats, qbinom(c(.5, .25, .75, .5, .875), c(1, 2, 2, 3, 3), .5).
  it("a chance that is met exactly is reached", () => {
    const asked: [number, number][] = [
      [0.5, 1],
      [0.25, 2],
      [0.75, 2],
      [0.5, 3],
      [0.875, 3],
    ];
    expect(asked.map(([p, n]) => binomialQuantile(p, n, 0.5).count)).toEqual([0, 0, 1, 1, 2]);
  });

  it("densities add up to one, and tails are sums of densities", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), chance, (n, p) => {
        const densities = Array.from({ length: n + 1 }, (_, x) => binomialDensity(x, n, p));
        let sum = 0;
        densities.forEach((density, x) => {
          sum += density;
          expect(binomialTails(x, n, p).lower).toBeCloseTo(sum, 12);
          expect(binomialTails(x, n, p).upper).toBeCloseTo(1 - sum + density, 12);
        });
        expect(sum).toBeCloseTo(1, 12);
      }),
    );
  });

  it("lame and drawn can change places, and what a draw cannot hold has no chance", () => {
    const draws = fc
      .integer({ min: 1, max: 300 })
      .chain((N) =>
        fc.record({ N: fc.constant(N), M: fc.integer({ min: 0, max: N }), n: fc.integer({ min: 0, max: N }) }),
      );
    fc.assert(
      fc.property(draws, fc.integer({ min: -1, max: 301 }), ({ N, M, n }, x) => {
        const density = hypergeometricDensity(x, { N, M, n });
        expect(hypergeometricDensity(x, { N, M: n, n: M })).toBeCloseTo(density, 12);
        const possible = x >= Math.max(0, n - (N - M)) && x <= Math.min(n, M);
        expect(density > 0).toBe(possible);
        const { lower, upper } = hypergeometricTails(x, { N, M, n });
        expect(lower + upper).toBeCloseTo(1 + density, 12);
      }),
    );
  });

  it("a two-sided p holds the observed count and everything as unlikely", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 80 }), fc.nat(80), chance, (n, some, share) => {
        const x = Math.min(some, n);
        const limit = binomialDensity(x, n, share) * (1 + 1e-7);
        // Below this, numbers themselves have few digits.
        fc.pre(limit > 1e-290);
        let sum = 0;
        for (let k = 0; k <= n; k++) {
          const density = binomialDensity(k, n, share);
          if (density <= limit) sum += density;
        }
        expectNear(binomialTwoSided(x, n, share), sum, 1e-9, `${x} ${n} ${share}`);
      }),
    );
  });
});
