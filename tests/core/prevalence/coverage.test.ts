import { describe, expect, it } from "vitest";
import { hypergeometricDensity } from "../../../src/core/distributions/hypergeometricDensity.ts";
import { exactCoverage } from "../../../src/core/prevalence/exactCoverage.ts";
import { finiteFlockInterval } from "../../../src/core/prevalence/finiteFlockInterval.ts";
import { type IntervalMethod, intervalMethods } from "../../../src/core/prevalence/proportionInterval.ts";
import { weightedPrevalence } from "../../../src/core/prevalence/weightedPrevalence.ts";

const upTo = (n: number): number[] => Array.from({ length: n + 1 }, (_, x) => x);
const shares = Array.from({ length: 999 }, (_, step) => (step + 1) / 1000);

function coverages(method: IntervalMethod, n: number, confidence: number): number[] {
  const intervals = upTo(n).map((x) => intervalMethods[method](x, n, confidence));
  return shares.map((share) => exactCoverage(intervals, share));
}

const mean = (numbers: readonly number[]): number => numbers.reduce((sum, number) => sum + number, 0) / numbers.length;

describe("how often an interval holds the truth, worked out exactly", () => {
  it("is a chance: all of the counts together make one", () => {
    const everything = upTo(60).map(() => ({ low: 0, high: 1 }));
    expect(exactCoverage(everything, 0.037)).toBeCloseTo(1, 13);
    const none = upTo(60).map(() => ({ low: 0.9, high: 1 }));
    expect(exactCoverage(none, 0.037)).toBe(0);
  });

  it.each([20, 60, 200, 420])("exact: never below the nominal level, n = %i", (n) => {
    for (const confidence of [0.5, 0.9, 0.95, 0.99]) {
      expect(Math.min(...coverages("exact", n, confidence))).toBeGreaterThanOrEqual(confidence - 1e-12);
    }
  });

  it.each([20, 60, 200, 420])("Wilson: near the nominal level on average, below it in places, n = %i", (n) => {
    const found = coverages("wilson", n, 0.95);
    expect(Math.abs(mean(found) - 0.95)).toBeLessThan(0.005);
    expect(Math.min(...found)).toBeGreaterThan(0.83);
    expect(Math.min(...found)).toBeLessThan(0.95);
  });

  it.each([
    [20, 60],
    [59, 60],
    [40, 300],
  ])("finite flock: never below the nominal level, %i of %i sheep", (n, N) => {
    for (const confidence of [0.5, 0.9, 0.95]) {
      const intervals = upTo(n).map((x) => finiteFlockInterval(x, n, N, confidence));
      for (const M of upTo(N)) {
        const held = intervals.reduce(
          (sum, { low, high }, x) =>
            Math.round(low * N) <= M && M <= Math.round(high * N) ? sum + hypergeometricDensity(x, { N, M, n }) : sum,
          0,
        );
        expect(held, `${M} lame of ${N}`).toBeGreaterThanOrEqual(confidence - 1e-12);
      }
    }
  });

  // "Share ± 1.96 standard errors", the textbook's way, holds the truth of the first flock with a chance of 0.21 only.
  it.each([[[0, 0, 2]], [[2, 1, 4]], [[6, 3, 11]], [[40, 6, 20]], [[2, 30, 0]]])(
    "groups weighted by size: near the nominal level with %j lame in three groups",
    (lame) => {
      const sizes = [120, 60, 220];
      const looked = [20, 15, 25];
      const truth = lame.reduce((sum, count) => sum + count, 0) / 400;
      const chances = sizes.map((N, group) => {
        const n = looked[group] ?? 0;
        return upTo(n).map((x) => hypergeometricDensity(x, { N, M: lame[group] ?? 0, n }));
      });
      let held = 0;
      chances[0]?.forEach((first, a) => {
        chances[1]?.forEach((second, b) => {
          chances[2]?.forEach((third, c) => {
            const chance = first * second * third;
            if (chance < 1e-8) return;
            const { low, high } = weightedPrevalence(sizes, [a, b, c], looked, 0.95);
            if (low <= truth && truth <= high) held += chance;
          });
        });
      });
      expect(held).toBeGreaterThan(0.925);
      expect(held).toBeLessThan(0.995);
    },
  );
});
