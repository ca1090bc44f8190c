import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Agreement, lookAgreement } from "../../../src/core/counting/lookAgreement.ts";
import { pairedChange } from "../../../src/core/counting/pairedChange.ts";
import { prevalenceChange } from "../../../src/core/counting/prevalenceChange.ts";
import { expectNear } from "../near.ts";
import { problemOf } from "../problemOf.ts";
import { type Case, cases } from "../references.ts";

// Made by tests/references/counting/pairs.py: scipy's optimiser and root finder, statsmodels, Gwet's printed sums.
const values = JSON.parse(readFileSync(new URL("../../references/counting/pairs.json", import.meta.url), "utf8"));

const paired = (becameLame: number, becameSound: number, seen: number, confidence = 0.95) =>
  pairedChange({ becameLame, becameSound, seen }, confidence);

describe("the same sheep looked at twice", () => {
  it("have the limits and the p of the reference values", () => {
    type Given = [number, number, number, number];
    const all: readonly Case<Given, [number, number, number, number]>[] = cases(values, "paired");
    for (const [[b, c, n, confidence], [change, low, high, p]] of all) {
      const found = paired(b, c, n, confidence);
      const what = `${b} ${c} of ${n}, ${confidence}`;
      expect(Math.abs(found.change - change), what).toBeLessThan(1e-12);
      expect(Math.abs(found.low - low), `low ${what}`).toBeLessThan(1e-6);
      expect(Math.abs(found.high - high), `high ${what}`).toBeLessThan(1e-6);
      expectNear(found.p, p, 1e-9, `p ${what}`);
    }
  });

  // Fagerland, Lydersen & Laake 2014, Stat Med 33:2850: 7 and 1 of 21, Tango's limits .026 and .517; from memory.
  it("have the limits of a published example", () => {
    const { low, high } = paired(7, 1, 21);
    expect(low).toBeCloseTo(0.026, 3);
    expect(high).toBeCloseTo(0.517, 3);
  });

  const looks = fc
    .tuple(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 0, max: 60 }), fc.integer({ min: 0, max: 300 }))
    .filter(([b, c, a]) => a + b + c > 0);

  it("turn round when lame and sound change places, and hold the change", () => {
    fc.assert(
      fc.property(looks, ([b, c, a]) => {
        const [there, back] = [paired(b, c, a + b + c), paired(c, b, a + b + c)];
        expect(there.low).toBeCloseTo(-back.high, 10);
        expectNear(there.p, back.p, 1e-9);
        expect(there.low).toBeLessThanOrEqual(there.change);
        expect(there.high).toBeGreaterThanOrEqual(there.change);
        expect(there.low).toBeGreaterThanOrEqual(-1);
        expect(there.high).toBeLessThanOrEqual(1);
      }),
    );
  });

  it("show a change that two separate looks would miss, where most lame sheep stay lame", () => {
    // 30 of 200 lame, then 20: the same 20, and 10 that became sound.
    const apart = prevalenceChange({ lame: [30], seen: [200] }, { lame: [20], seen: [200] }, 0.95);
    const together = paired(0, 10, 200);
    expect(apart.change).toBeCloseTo(together.change, 12);
    expect(apart.high).toBeGreaterThan(0);
    expect(together.high).toBeLessThan(0);
    expect(together.p).toBeCloseTo(2 ** -9, 12);
    expect(apart.p).toBeGreaterThan(0.1);
  });

  it("are refused where more changed than were seen, or none was", () => {
    expect(problemOf(() => paired(3, 4, 6)).message).toContain("seen: 6 is fewer than the 7 that became");
    expect(problemOf(() => paired(0, 0, 0)).place.argument).toBe("seen");
  });
});

/** Two columns of names that make up a table of counts. */
function columnsOf(table: readonly (readonly number[])[]): [string[], string[]] {
  const pairs = table.flatMap((row, i) =>
    row.flatMap((count, j) => Array.from({ length: count }, () => [`score ${i}`, `score ${j}`] as const)),
  );
  return [pairs.map(([one]) => one), pairs.map(([, other]) => other)];
}

const measure = (found: readonly Agreement[], name: Agreement["measure"]) => found.find((one) => one.measure === name);

describe("two lookers", () => {
  it("have the kappa and the AC1 of the reference values, with their ranges", () => {
    type Given = [number[][], number];
    const all: readonly Case<Given, Record<"kappa" | "AC1", [number, number, number]>>[] = cases(values, "agreement");
    for (const [[table, confidence], expected] of all) {
      const found = lookAgreement(...columnsOf(table), confidence);
      for (const name of ["kappa", "AC1"] as const) {
        const one = measure(found, name);
        [one?.value, one?.low, one?.high].forEach((value, index) => {
          expect(Math.abs((value ?? NaN) - (expected[name][index] ?? NaN)), `${name} ${table}`).toBeLessThan(1e-12);
        });
      }
    }
  });

  // Cohen's own table and statistic as in handbooks: 20, 5, 10, 15 give 0.4; from memory.
  it("have the kappa of the handbooks' example", () => {
    const table = [
      [20, 5],
      [10, 15],
    ];
    expect(measure(lookAgreement(...columnsOf(table), 0.95), "kappa")?.value).toBeCloseTo(0.4, 12);
  });

  it("are not beyond doubt when they agree about every sheep of a few", () => {
    const found = lookAgreement(["lame", "sound", "sound"], ["Lame ", "sound", "sound"], 0.95);
    for (const { value, low, high } of found) {
      expect([value, high]).toEqual([1, 1]);
      expect(low).toBeLessThan(0.6);
    }
  });

  it("agree as much the other way round", () => {
    const name = fc.constantFrom("sound", "mildly lame", "lame");
    fc.assert(
      fc.property(fc.array(fc.tuple(name, name), { minLength: 2, maxLength: 60 }), (pairs) => {
        const [one, other] = [pairs.map(([a]) => a), pairs.map(([, b]) => b)];
        if (new Set([...one, ...other]).size < 2) return;
        const [there, back] = [lookAgreement(one, other, 0.9), lookAgreement(other, one, 0.9)];
        there.forEach((here, index) => {
          expect(here.value).toBeCloseTo(back[index]?.value ?? NaN, 10);
          expect(here.low).toBeCloseTo(back[index]?.low ?? NaN, 10);
          expect(here.low).toBeLessThanOrEqual(here.value);
          expect(here.high).toBeGreaterThanOrEqual(here.value);
        });
      }),
    );
  });

  it("show nothing without a sheep, or with one name for all", () => {
    expect(problemOf(() => lookAgreement([], [], 0.95)).code).toBe("#N/A");
    expect(problemOf(() => lookAgreement(["sound"], ["Sound"], 0.95)).code).toBe("#N/A");
    expect(problemOf(() => lookAgreement(["sound"], [], 0.95)).place.argument).toBe("second");
  });
});
