import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { chanceByMethod, type FindMethod } from "../../../src/core/planning/chanceByMethod.ts";
import { detectChance } from "../../../src/core/planning/detectChance.ts";
import { exactDetectChance } from "../../../src/core/planning/exactDetectChance.ts";
import { freedom } from "../../../src/core/planning/freedom.ts";
import { freedomAfter } from "../../../src/core/planning/freedomAfter.ts";
import { sampleToEstimate } from "../../../src/core/planning/sampleToEstimate.ts";
import { type FindPlan, sampleToFind } from "../../../src/core/planning/sampleToFind.ts";
import { sampleToFindText } from "../../../src/core/planning/sampleToFindText.ts";
import { expectNear } from "../near.ts";
import { problemOf } from "../problemOf.ts";
import { cases, ownReferences } from "../references.ts";

// Made by tests/references/planning/make.py.
const values = ownReferences(import.meta.url);

const find = (
  flockSize: number | undefined,
  designPrevalence: number,
  confidence = 0.95,
  sensitivity = 1,
  method: FindMethod = "exact",
) => sampleToFind({ flockSize, designPrevalence, confidence, sensitivity, method }).sheep;

describe("sampleToEstimate", () => {
  it("agrees with the reference values", () => {
    type Plan = [number, number, number | null, number];
    for (const [[expected, precision, flock, confidence], sheep] of cases<Plan, number>(values, "estimate")) {
      const plan = { expected, precision, flockSize: flock ?? undefined, confidence };
      expect(sampleToEstimate(plan), JSON.stringify(plan)).toBe(sheep);
    }
  });

  // Cochran 1977; R 4.2 stats.
  it("2 % within 1 % of 1000, and a half within 5 % of 900", () => {
    expect(sampleToEstimate({ expected: 0.02, precision: 0.01, flockSize: 1000, confidence: 0.95 })).toBe(430);
    expect(sampleToEstimate({ expected: 0.5, precision: 0.05, flockSize: 900, confidence: 0.95 })).toBe(270);
  });

  it("never asks for more sheep than the flock has", () => {
    const shares = fc.double({ min: 0.001, max: 0.999, noNaN: true });
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e7 }), shares, shares, (flockSize, expected, precision) => {
        const sheep = sampleToEstimate({ expected, precision, flockSize, confidence: 0.95 });
        expect(sheep).toBeGreaterThanOrEqual(1);
        expect(sheep).toBeLessThanOrEqual(flockSize);
      }),
    );
  });

  it("refuses what the sum cannot answer", () => {
    const ask = (expected: number, precision: number) => () =>
      sampleToEstimate({ expected, precision, confidence: 0.95 });
    expect(problemOf(ask(0, 0.01)).place.argument).toBe("expected");
    expect(problemOf(ask(1, 0.01)).place.argument).toBe("expected");
    expect(problemOf(ask(0.1, 0)).place.argument).toBe("precision");
  });
});

describe("sampleToFind", () => {
  // R 4.2 stats: smallest n with 1 − choose(N − d, n) / choose(N, n) at least 0.95.
  it.each([
    [100, 25, 45, 78, 95],
    [300, 28, 54, 117, 189],
    [1000, 29, 57, 138, 258],
    [undefined, 29, 59, 149, 299],
  ])("95 %% in a flock of %s", (flock, ...sheep) => {
    expect([0.1, 0.05, 0.02, 0.01].map((design) => find(flock, design))).toEqual(sheep);
  });

  it("lets a chance that is met exactly count (9 of 10 sheep, 90 %)", () => expect(find(10, 0.1, 0.9)).toBe(9));

  // MacDiarmid 1988: with 50 and 15 lame, Python's ceil(1000 / .95 * (1 - .05 ** (1 / 50))) is 62, and
  // ceil(300 / .8 * (1 - .05 ** (1 / 15))) is 68.
  it("allows for an imperfect look", () => {
    expect(find(1000, 0.05, 0.95, 0.95, "formula")).toBe(62);
    expect(find(300, 0.05, 0.95, 0.8, "formula")).toBe(68);
  });

  it("agrees with the reference values", () => {
    for (const check of ["findExact", "findLarge"]) {
      for (const [[N, p, c], sheep] of cases<[number, number, number], number>(values, check)) {
        expect(find(N, p, c), `${N} ${p} ${c}`).toBe(sheep);
      }
    }
    for (const [[N, p, c, se], sheep] of cases<[number, number, number, number], number | null>(
      values,
      "findFormula",
    )) {
      expect(find(N, p, c, se, "formula") ?? null, `${N} ${p} ${c} ${se}`).toBe(sheep);
    }
    for (const [[N, p, c, se], sheep] of cases<[number, number, number, number], number | null>(
      values,
      "findExactLook",
    )) {
      expect(find(N, p, c, se) ?? null, `${N} ${p} ${c} ${se}`).toBe(sheep);
    }
    for (const [[p, c, se], sheep] of cases<[number, number, number], number>(values, "findEndless")) {
      expect(find(undefined, p, c, se), `${p} ${c} ${se}`).toBe(sheep);
    }
  });

  const plans = fc.record({
    flockSize: fc.integer({ min: 1, max: 3000 }),
    designPrevalence: fc.double({ min: 0.001, max: 1, noNaN: true }),
    confidence: fc.double({ min: 0.5, max: 0.9999, noNaN: true }),
    sensitivity: fc.double({ min: 0.3, max: 1, noNaN: true }),
  });

  it.each(["exact", "formula"] as const)("%s: agrees with the chance of finding; one fewer is not enough", (method) => {
    fc.assert(
      fc.property(plans, (plan) => {
        const { sheep } = sampleToFind({ ...plan, method });
        const chance = (lookedAt: number) => chanceByMethod[method]({ ...plan, lookedAt });
        if (sheep === undefined) expect(chance(plan.flockSize)).toBeLessThan(plan.confidence);
        else {
          expect(chance(sheep)).toBeGreaterThanOrEqual(plan.confidence - 2e-9);
          if (sheep > 1) expect(chance(sheep - 1)).toBeLessThan(plan.confidence);
        }
      }),
    );
  });

  it("the formula for an imperfect look never asks for fewer than the exact chance needs", () => {
    fc.assert(
      fc.property(plans, (plan) => {
        const byFormula = sampleToFind({ ...plan, method: "formula" }).sheep ?? Infinity;
        expect(sampleToFind(plan).sheep ?? Infinity).toBeLessThanOrEqual(byFormula);
      }),
    );
  });

  it("says in words when the whole flock is not enough", () => {
    const plan: FindPlan = { flockSize: 40, designPrevalence: 0.02, confidence: 0.95, sensitivity: 0.8 };
    expect(sampleToFindText(plan)).toBe("cannot reach 95 %: even all 40 sheep are not enough, they give 80 %");
    expect(sampleToFindText({ ...plan, sensitivity: 1 })).toBe(38);
    expect(sampleToFindText({ ...plan, sensitivity: 0.949998 })).toBe(
      "cannot reach 95 %: even all 40 sheep are not enough, they give 94.9998 %",
    );
  });

  it("refuses a design prevalence, sensitivity or flock of nothing", () => {
    expect(problemOf(() => find(100, 0)).place.argument).toBe("design_prevalence");
    expect(problemOf(() => find(undefined, 0)).place.argument).toBe("design_prevalence");
    expect(problemOf(() => find(100, 0.1, 0.95, 0)).place.argument).toBe("sensitivity");
    expect(problemOf(() => find(0, 0.1)).place.argument).toBe("flock_size");
  });

  // The chance of finding none is C(N − d, n) / C(N, n), here as a plain product.
  it("is the smallest number that is enough, in a flock of a million too", () => {
    const [flock, lame] = [1_000_000, 20_000];
    const missed = (n: number): number => {
      let chance = 1;
      for (let i = 0; i < n; i++) chance *= (flock - lame - i) / (flock - i);
      return chance;
    };
    const sheep = find(flock, lame / flock) ?? NaN;
    expect(1 - missed(sheep)).toBeGreaterThanOrEqual(0.95);
    expect(1 - missed(sheep - 1)).toBeLessThan(0.95);
  });
});

describe("chance of finding", () => {
  it("agrees with the reference values", () => {
    type Look = [number, number, number, number];
    for (const [[N, n, p, se], [formula, exact]] of cases<Look, [number, number]>(values, "chance")) {
      const look = { flockSize: N, lookedAt: n, designPrevalence: p, sensitivity: se };
      expectNear(detectChance(look), formula, 1e-10, JSON.stringify(look));
      expectNear(exactDetectChance(look), exact, 1e-10, JSON.stringify(look));
    }
  });

  // MacDiarmid 1988: with 50 lame, Python's 1 - (1 - 58 / 1000) ** 50.
  it("58 of 1000 at 5 %", () => {
    const look = { flockSize: 1000, lookedAt: 58, designPrevalence: 0.05, sensitivity: 1 };
    expectNear(detectChance(look), 0.9495866985, 1e-10);
  });

  it("the formula never promises more than the exact chance", () => {
    const looks = fc.integer({ min: 1, max: 2000 }).chain((flockSize) =>
      fc.record({
        flockSize: fc.constant(flockSize),
        lookedAt: fc.integer({ min: 0, max: flockSize }),
        designPrevalence: fc.double({ min: 0.001, max: 1, noNaN: true }),
        sensitivity: fc.double({ min: 0.1, max: 1, noNaN: true }),
      }),
    );
    fc.assert(
      fc.property(looks, (look) => {
        expect(detectChance(look)).toBeLessThanOrEqual(exactDetectChance(look) + 1e-12);
      }),
    );
  });

  it("keeps its digits when the chance is small", () => {
    const look = { flockSize: 1e7, lookedAt: 1, designPrevalence: 1e-7, sensitivity: 1 };
    expectNear(exactDetectChance(look), 1e-7, 1e-10);
    expectNear(detectChance(look), 1e-7, 1e-10);
  });

  // A flock of a thousand million, half of it lame, half of it looked at: at once, and all but sure.
  it("is quick in the largest flock", () => {
    const look = { flockSize: 1e9, lookedAt: 5e8, designPrevalence: 0.5, sensitivity: 0.5 };
    expect(exactDetectChance(look)).toBeCloseTo(1, 10);
  });

  it("refuses more sheep looked at than there are", () => {
    const look = { flockSize: 100, lookedAt: 101, designPrevalence: 0.1, sensitivity: 1 };
    expect(problemOf(() => detectChance(look)).message).toContain("looked_at: 101 is more than the 100 sheep");
  });
});

describe("freedom", () => {
  // Bayes' rule by hand: .5 / (1 − .5 × .95).
  it("is what Bayes' rule says", () => {
    expectNear(freedomAfter(0.95, 0.5), 0.9523809524, 1e-10);
    expect(freedomAfter(1, 0)).toBe(0);
    expect(freedomAfter(0.7, 1)).toBe(1);
  });

  it("does not change without looking, and only grows by looking", () => {
    const look = { flockSize: 200, designPrevalence: 0.05, sensitivity: 0.9 };
    expect(freedom({ ...look, lookedAt: 0 }, 0.3)).toBe(0.3);
    const steps = [10, 50, 100, 200].map((lookedAt) => freedom({ ...look, lookedAt }, 0.3));
    expect([...steps].sort((a, b) => a - b)).toEqual(steps);
  });
});
