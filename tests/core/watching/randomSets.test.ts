import { describe, it } from "vitest";
import { newCaseRate } from "../../../src/core/watching/newCaseRate.ts";
import { rateChange } from "../../../src/core/watching/rateChange.ts";
import { expectNear } from "../near.ts";
import { cases, references } from "../references.ts";

// Made by tests/references/random/script.R: R's poisson.test.
const values = references("random");

describe("random sets against R's poisson.test", () => {
  it("a rate of new cases", () => {
    for (const [[x, days, confidence], [rate, low, high]] of cases<[number, number, number], number[]>(
      values,
      "rate",
    )) {
      const found = newCaseRate(x, days, confidence, 1);
      expectNear(found.rate, rate ?? NaN, 1e-12, `${x} in ${days}`);
      expectNear(found.low, low ?? NaN, 1e-10, `low, ${x} in ${days}`);
      expectNear(found.high, high ?? NaN, 1e-10, `high, ${x} in ${days}`);
    }
  });

  it("a change of a rate", () => {
    type Given = [before: number, daysBefore: number, after: number, daysAfter: number, confidence: number];
    for (const [[x, s, y, t, confidence], [ratio, low, high, p]] of cases<Given, number[]>(values, "ratio")) {
      const found = rateChange({ cases: x, days: s }, { cases: y, days: t }, confidence);
      const what = `${x} in ${s}, ${y} in ${t}`;
      expectNear(found.ratio, ratio ?? NaN, 1e-12, what);
      expectNear(found.low, low ?? NaN, 1e-9, `low ${what}`);
      expectNear(found.high, high ?? NaN, 1e-9, `high ${what}`);
      expectNear(found.p, p ?? NaN, 1e-9, `p ${what}`);
    }
  });
});
