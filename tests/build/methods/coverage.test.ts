import { describe, expect, it } from "vitest";
import { coverageOf, coverageSizes } from "../../../src/build/methods/coverage.ts";

describe("the coverage that the pages print", () => {
  // Just outside the ends of the ranges too, where coverage is least and a grid may pass by.
  it.each(coverageSizes)("exact: never below 95 in 100, n = %i", (n) => {
    expect(coverageOf("exact", n).least).toBeGreaterThanOrEqual(0.95 - 1e-12);
  });

  // Brown, Cai & DasGupta 2001, Stat Sci 16:101: the dips of Wilson's interval near 0 tend to 0.838 (from memory).
  it("Wilson: the deepest dip tends to 0.838", () => {
    expect(coverageOf("wilson", 420).least).toBeCloseTo(0.838, 3);
  });

  it.each(coverageSizes)("Wilson: between 95 and 95.5 in 100 on average, n = %i", (n) => {
    const { mean } = coverageOf("wilson", n);
    expect(mean).toBeGreaterThan(0.95);
    expect(mean).toBeLessThan(0.955);
  });
});
