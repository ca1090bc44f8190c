import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { changePower } from "../../../src/core/planning/changePower.ts";
import { fisherEdges } from "../../../src/core/planning/fisherEdges.ts";
import { sampleToCompare } from "../../../src/core/planning/sampleToCompare.ts";
import { fisherExact } from "../../../src/core/statistics/fisherExact.ts";
import { expectNear } from "../near.ts";
import { problemOf } from "../problemOf.ts";
import { cases, references } from "../references.ts";

// Made by tests/references/comparing/script.R: R's fisher.test over every table.
const values = references("comparing");

describe("the power of Fisher's exact test", () => {
  it("agrees with the reference values", () => {
    for (const [[n, before, after, level], power] of cases<[number, number, number, number], number>(values, "power"))
      expectNear(changePower(n, before, after, level), power, 1e-10, `${n} ${before} ${after} ${level}`);
  });

  it("is the same whichever flock comes first, and counted lame or sound", () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 80 }), share, share, (n, one, other) => {
        const power = changePower(n, one, other, 0.05);
        expect(changePower(n, other, one, 0.05)).toBeCloseTo(power, 10);
        expect(changePower(n, 1 - one, 1 - other, 0.05)).toBeCloseTo(power, 10);
      }),
    );
  });

  // The test's promise: without a change it speaks of one no more often than its level says.
  it("without a change is never above the level", () => {
    for (const n of [5, 20, 100, 700])
      for (const share of [0, 0.01, 0.05, 0.3, 0.5])
        expect(changePower(n, share, share, 0.05), `${n} ${share}`).toBeLessThanOrEqual(0.05);
  });
});

describe("fisherEdges", () => {
  const level = fc.constantFrom(1e-9, 0.001, 0.01, 0.05, 0.1, 0.5, 0.9);

  it("lie where the test itself begins to speak of a change", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 5000 }),
        level,
        fc.double({ min: 0, max: 1, noNaN: true }),
        (n, at, part) => {
          const from = Math.floor(part * 2 * n);
          const to = Math.min(from + 300, 2 * n);
          fisherEdges(n, at, from, to).forEach((edge, index) => {
            const total = from + index;
            const changed = (x: number) => fisherExact(x, n, total - x, n) <= at;
            if (edge >= Math.max(0, total - n)) expect(changed(edge), `${n} ${at} ${total} ${edge}`).toBe(true);
            if (edge + 1 <= total / 2) expect(changed(edge + 1), `${n} ${at} ${total} ${edge}`).toBe(false);
          });
        },
      ),
      { numRuns: 60, seed: 18 },
    );
  });
});

describe("sampleToCompare", () => {
  it("agrees with the reference values", () => {
    type Plan = [number, number, number, number];
    for (const [[before, after, power, confidence], sheep] of cases<Plan, number>(values, "sheep"))
      expect(sampleToCompare({ before, after, power, confidence }), `${before} ${after}`).toBe(sheep);
  });

  it("so many are enough, and so are a few more; one fewer is not", () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    const power = fc.double({ min: 0.5, max: 0.95, noNaN: true });
    fc.assert(
      fc.property(share, share, power, (before, after, wanted) => {
        fc.pre(Math.abs(before - after) > 0.1);
        const plan = { before, after, power: wanted, confidence: 0.95 };
        const n = sampleToCompare(plan);
        const reaches = (sheep: number) => changePower(sheep, before, after, 1 - 0.95) >= wanted - 1e-9;
        for (let more = 0; more <= 3; more++) expect(reaches(n + more)).toBe(true);
        if (n > 1) expect(reaches(n - 1)).toBe(false);
      }),
      { numRuns: 60, seed: 18 },
    );
  });

  // Where the exact number gives way to the approximation, the two must not lie far apart.
  it("goes over to the approximation without a leap", () => {
    const at = (after: number) => sampleToCompare({ before: 0.05, after, power: 0.8, confidence: 0.95 });
    const [exact, beyond] = [at(0.038), at(0.0385)];
    expect(exact).toBeLessThan(5000);
    expect(beyond).toBeGreaterThan(5000);
    expect(beyond / exact).toBeLessThan(1.15);
  });

  it("refuses no change, and one that no number of sheep can tell", () => {
    const ask = (before: number, after: number) => () =>
      sampleToCompare({ before, after, power: 0.8, confidence: 0.95 });
    expect(problemOf(ask(0.05, 0.05)).place.argument).toBe("after");
    expect(problemOf(ask(0.05, 0.05 + 1e-7)).message).toContain("too near");
  });
});
