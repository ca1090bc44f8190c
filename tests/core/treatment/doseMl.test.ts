import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Problem } from "../../../src/cells/problem.ts";
import { batchMl } from "../../../src/core/treatment/batchMl.ts";
import { doseMl } from "../../../src/core/treatment/doseMl.ts";

const dose = (weight: number, mgPerKg: number, mgPerMl: number, markMl = 0.1) =>
  doseMl({ mgPerKg, mgPerMl, markMl }, "weight_kg")(weight);

describe("doseMl", () => {
  // 75 kg × 20 mg/kg ÷ 200 mg/ml = 7.5 ml: common practice, worked by hand, as are the others.
  it.each([
    [75, 20, 200, 0.1, 7.5],
    [3, 20, 200, 0.1, 0.3],
    [61.2, 20, 200, 0.1, 6.1],
    [68.3, 20, 200, 0.5, 7],
    [68.3, 20, 200, 0.25, 6.75],
    [68.3, 20, 200, 1, 7],
    [60, 1, 1, 0.01, 60],
    [45, 20, 100, 10, 10],
  ])("%d kg, %d mg/kg, %d mg/ml, mark %d → %d ml", (weight, mgPerKg, mgPerMl, mark, ml) => {
    expect(dose(weight, mgPerKg, mgPerMl, mark)).toBe(ml);
  });

  // 80.5 kg → 8.05 ml and 10.5 kg → 1.05 ml lie halfway; in binary 8.05 / 0.1 falls short of 80.5.
  it("goes up halfway between two marks, counted in decimals", () => {
    expect(dose(80.5, 20, 200)).toBe(8.1);
    expect(dose(10.5, 20, 200)).toBe(1.1);
    expect(dose(11.5, 20, 200)).toBe(1.2);
    expect(dose(80.4, 20, 200)).toBe(8);
  });

  it.each([0, 0.99, 200.01, 750, -75])("refuses %d kg", (weight) => {
    expect(() => dose(weight, 20, 200)).toThrow(`weight_kg: ${weight} kg is outside 1 to 200 kg`);
  });

  it.each([0.005, 0.125, 10.01, 20, 1 / 3])("refuses a mark of %d ml", (mark) => {
    expect(() => dose(75, 20, 200, mark)).toThrow("mark_ml: ");
  });

  it("refuses a dose that no syringe shows, and one that no sheep gets", () => {
    expect(() => dose(4.9, 2, 200, 0.1)).toThrow("4.9 kg asks for 0.049 ml, and the nearest mark is 0 ml");
    expect(dose(60, 20, 20)).toBe(60);
    expect(() => dose(60.1, 20, 20)).toThrow("60.1 ml for an animal of 60.1 kg cannot be right");
    expect(() => dose(75, 20, 0.2)).toThrow("7500 ml for an animal of 75 kg cannot be right");
  });

  // At a mark of 0.1 ml 0.12 ml is measured a sixth too small, 0.126 more than a fifth; 0.084 less than a fifth too large,
  // 0.08 a quarter. Worked by hand.
  it("refuses a mark that misses the dose by more than a fifth", () => {
    expect(dose(12, 2, 200)).toBe(0.1);
    expect(() => dose(12.6, 2, 200)).toThrow("12.6 kg asks for 0.13 ml, and the nearest mark is 0.1 ml");
    expect(() => dose(5, 2, 200)).toThrow("5 kg asks for 0.05 ml, and the nearest mark is 0.1 ml");
    expect(() => dose(8, 2, 200)).toThrow("the nearest mark is 0.1 ml");
    expect(dose(8.4, 2, 200)).toBe(0.1);
    expect(() => dose(15, 2, 200)).toThrow("the nearest mark is 0.2 ml");
    expect(dose(17, 2, 200)).toBe(0.2);
  });

  it("is the nearest mark in whole-number arithmetic, printed without a trace of binary fractions", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 10, max: 2000 }),
        fc.integer({ min: 1, max: 400 }),
        fc.integer({ min: 50, max: 4000 }),
        fc.constantFrom(1, 2, 5, 10, 20, 25, 50, 100),
        (tenthsOfKg, tenthsOfMgPerKg, mgPerMl, hundredths) => {
          // ml in marks = (w/10 · m/10 / s) / (h/100) = w·m / (s·h), rounded half up.
          const above = BigInt(tenthsOfKg * tenthsOfMgPerKg);
          const below = BigInt(mgPerMl * hundredths);
          const marks = (2n * above + below) / (2n * below);
          const find = () => dose(tenthsOfKg / 10, tenthsOfMgPerKg / 10, mgPerMl, hundredths / 100);
          const ml = Number(marks * BigInt(hundredths)) / 100;
          // |marks · s·h − w·m| > w·m / 5
          const missed = marks * below - above;
          if (5n * (missed < 0n ? -missed : missed) > above || ml > 60) expect(find).toThrow(Problem);
          else {
            expect(find()).toBe(ml);
            expect(String(find())).toMatch(/^\d+(\.\d{1,2})?$/);
          }
        },
      ),
    );
  });
});

describe("batchMl", () => {
  const dosing = { mgPerKg: 20, mgPerMl: 200, markMl: 0.1 };

  // 7.5 + 6 + 6.8 = 20.3; with 5 % 21.315: worked by hand.
  it("adds the doses at their marks and the spare", () => {
    expect(batchMl([75, 60, 68.3], dosing, 0.05, 20)).toEqual({ totalMl: 21.315, bottles: 2, largestMl: 7.5 });
    expect(batchMl([75, 60], dosing, 0, undefined)).toEqual({ totalMl: 13.5, bottles: undefined, largestMl: 7.5 });
  });

  it("counts a full bottle as one", () => {
    expect(batchMl([100, 100], dosing, 0, 20).bottles).toBe(1);
    expect(batchMl([100, 101], dosing, 0, 20).bottles).toBe(2);
  });

  it("names the row of a weight that cannot be", () => {
    try {
      batchMl([75, 7500], dosing, 0.05, undefined);
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(Problem);
      expect((error as Problem).place).toEqual({ argument: "weights_kg", index: 1 });
    }
  });

  it("is enough for every animal, and wastes less than a bottle", () => {
    const weights = fc.array(fc.integer({ min: 20, max: 2000 }), { minLength: 1, maxLength: 40 });
    fc.assert(
      fc.property(weights, fc.integer({ min: 0, max: 50 }), fc.integer({ min: 5, max: 500 }), (tenths, per, bottle) => {
        const kg = tenths.map((weight) => weight / 10);
        const batch = batchMl(kg, dosing, per / 100, bottle);
        const marks = kg.reduce((sum, weight) => sum + Math.round(dose(weight, 20, 200) * 10), 0);
        expect(batch.totalMl).toBe((marks * (100 + per)) / 1000);
        const bottles = batch.bottles as number;
        expect(bottles * bottle).toBeGreaterThanOrEqual(batch.totalMl);
        expect((bottles - 1) * bottle).toBeLessThan(batch.totalMl);
        expect(kg.map((weight) => dose(weight, 20, 200))).toContain(batch.largestMl);
        expect(batch.largestMl).toBe(dose(Math.max(...kg), 20, 200));
      }),
    );
  });
});
