import { describe, expect, it } from "vitest";
import { weightedPrevalence } from "../../../src/core/counting/weightedPrevalence.ts";
import { exactCoverage } from "../../../src/core/statistics/exactCoverage.ts";
import { finiteFlockInterval } from "../../../src/core/statistics/finiteFlockInterval.ts";
import { hypergeometricDensity } from "../../../src/core/statistics/hypergeometricDensity.ts";
import { type IntervalMethod, intervalMethods } from "../../../src/core/statistics/proportionInterval.ts";
import { expectNear } from "../near.ts";
import { cases, ownReferences } from "../references.ts";

// Made by tests/references/counting/make.py.
const values = ownReferences(import.meta.url);

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

  // In the reference values 0.9505 to 0.9532 on average, and 0.852 to 0.933 at least.
  it.each(cases<[number, number], [number, number]>(values, "wilsonHolds"))(
    "Wilson: near the nominal level on average, below it in places, %j",
    ([n, confidence], [average, least]) => {
      const found = coverages("wilson", n, confidence);
      expectNear(mean(found), average, 1e-10);
      expectNear(Math.min(...found), least, 1e-10);
    },
  );

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

  // In the reference values 0.955 and more; "share ± 1.96 standard errors", the textbook's way, holds the truth of the
  // first flock with a chance of 0.21 only.
  type Groups = [sizes: number[], lame: number[], looked: number[], confidence: number];
  it.each(cases<Groups, [number, number]>(values, "strataHold"))(
    "groups weighted by size: near the nominal level with sizes, lame and looked at %j",
    ([sizes, lame, looked, confidence], [expected]) => {
      const sum = (counts: readonly number[]) => counts.reduce((total, count) => total + count, 0);
      const truth = sum(lame) / sum(sizes);
      const chances = sizes.map((N, group) => {
        const n = looked[group] ?? 0;
        return upTo(n).map((x) => hypergeometricDensity(x, { N, M: lame[group] ?? 0, n }));
      });
      let held = 0;
      chances[0]?.forEach((first, a) => {
        chances[1]?.forEach((second, b) => {
          chances[2]?.forEach((third, c) => {
            const chance = first * second * third;
            if (chance === 0) return;
            const { low, high } = weightedPrevalence(sizes, [a, b, c], looked, confidence);
            if (low <= truth && truth <= high) held += chance;
          });
        });
      });
      expectNear(held, expected, 1e-10);
    },
  );
});
