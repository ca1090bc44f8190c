import { expect, it } from "vitest";
import { beyondFunnel } from "../../../src/build/methods/beyondFunnel.ts";

// Sum of scipy.stats.betabinom.pmf(x, 200, 0.95, 18.05) over the counts of which scipy.stats.binom(200, 0.05) gives a
// tail of at most 0.025 (scipy 1.17.1).
it("flocks that differ: the chance of a share outside the limits", () => {
  expect(beyondFunnel(200, 0.05, 0.05, 0.025)).toBeCloseTo(0.5181597847769043, 10);
});

it("flocks that do not differ: no more outside than the limits allow for", () => {
  for (const n of [50, 100, 200, 500]) expect(beyondFunnel(n, 0.05, 0, 0.025)).toBeLessThanOrEqual(0.05);
  expect(beyondFunnel(500, 0.05, 0, 0.025)).toBeGreaterThan(0.035);
});

it("a little correlation is nearly none", () => {
  expect(beyondFunnel(100, 0.05, 1e-9, 0.025)).toBeCloseTo(beyondFunnel(100, 0.05, 0, 0.025), 6);
});
