import { expect, it } from "vitest";
import { beyondFunnel } from "../../../src/build/methods/beyondFunnel.ts";

// Sum of scipy.stats.betabinom.pmf(x, 200, 0.95, 18.05) over the counts outside the limits of scipy.stats.binom (scipy 1.17.1).
it("flocks that differ: the chance of a share outside the limits", () => {
  expect(beyondFunnel(200, 0.05, 0.05, 0.025)).toBeCloseTo(0.5384454500559523, 10);
});

it("flocks that do not differ: no more outside than the limits allow for, give or take one count", () => {
  expect(beyondFunnel(500, 0.05, 0, 0.025)).toBeCloseTo(0.05, 2);
});

it("a little correlation is nearly none", () => {
  expect(beyondFunnel(100, 0.05, 1e-9, 0.025)).toBeCloseTo(beyondFunnel(100, 0.05, 0, 0.025), 6);
});
