import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Problem } from "../../../src/cells/problem.ts";
import { medicineUse } from "../../../src/core/medicines/medicineUse.ts";
import { flockPcu, mgPerPcu } from "../../../src/core/medicines/mgPerPcu.ts";
import { expectNear } from "../near.ts";

describe("mgPerPcu", () => {
  // European Medicines Agency, ESVAC: 75 kg and 20 kg (read about). 300 ewes + 450 lambs; the division by hand.
  it("spreads mg over the published weights", () => {
    expect(flockPcu(300, 450)).toBe(31_500);
    expectNear(mgPerPcu(153_600, 300, 450), 4.876190476, 1e-9);
  });

  it("reports nothing without sheep", () => {
    expect(() => mgPerPcu(100, 0, 0)).toThrow(Problem);
  });
});

describe("medicineUse", () => {
  it("adds up by product in order of first appearance", () => {
    const use = medicineUse(
      { products: ["B", "a", " b ", "A"], ml: [0.1, 7.6, 0.2, 7.7], mgPerMl: [300, 200, 300, 200] },
      300,
      450,
    );
    expect(use.map(({ product, courses, ml, activeMg }) => [product, courses, ml, activeMg])).toEqual([
      ["B", 2, 0.3, 90],
      ["a", 2, 15.3, 3060],
      ["all", 4, 15.6, 3150],
    ]);
    expectNear(use[2]?.mgPerPcu ?? 0, 0.1, 1e-12);
  });

  it("takes a name with more spaces in it for the same product", () => {
    const use = medicineUse({ products: ["Spray  A", "spray a"], ml: [1, 2], mgPerMl: [10, 10] }, 300, 450);
    expect(use.map(({ product, courses }) => [product, courses])).toEqual([
      ["Spray A", 2],
      ["all", 2],
    ]);
  });

  it("names the row of a product called all", () => {
    try {
      medicineUse({ products: ["A", " ALL"], ml: [1, 1], mgPerMl: [1, 1] }, 1, 0);
      expect.unreachable();
    } catch (error) {
      expect((error as Problem).place).toEqual({ argument: "products", index: 1 });
    }
  });

  it("has no rows without courses", () => {
    expect(medicineUse({ products: [], ml: [], mgPerMl: [] }, 300, 450)).toEqual([]);
  });

  it("loses no course, and all is the sum", () => {
    const course = fc.tuple(
      fc.constantFrom("A", "B", "C", "a"),
      fc.integer({ min: 1, max: 500 }),
      fc.integer({ min: 1, max: 500 }),
    );
    fc.assert(
      fc.property(fc.array(course, { minLength: 1, maxLength: 40 }), (courses) => {
        const use = medicineUse(
          {
            products: courses.map(([product]) => product),
            ml: courses.map(([, tenths]) => tenths / 10),
            mgPerMl: courses.map(([, , strength]) => strength),
          },
          120,
          90,
        );
        const all = use.at(-1);
        expect(all?.product).toBe("all");
        expect(all?.courses).toBe(courses.length);
        expect(all?.activeMg).toBe(courses.reduce((sum, [, tenths, strength]) => sum + tenths * strength, 0) / 10);
        expectNear(all?.mgPerPcu ?? 0, mgPerPcu(all?.activeMg ?? 0, 120, 90), 1e-12);
        const parts = use.slice(0, -1);
        expect(new Set(parts.map(({ product }) => product.toLowerCase())).size).toBe(parts.length);
        expect(parts.reduce((sum, { courses: n }) => sum + n, 0)).toBe(courses.length);
        expectNear(
          parts.reduce((sum, { activeMg }) => sum + activeMg, 0),
          all?.activeMg ?? 0,
          1e-12,
        );
      }),
    );
  });
});
