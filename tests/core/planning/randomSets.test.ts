import { describe, expect, it } from "vitest";
import { chanceByMethod } from "../../../src/core/planning/chanceByMethod.ts";
import { exactDetectChance } from "../../../src/core/planning/exactDetectChance.ts";
import { freedom } from "../../../src/core/planning/freedom.ts";
import { sampleToEstimate } from "../../../src/core/planning/sampleToEstimate.ts";
import { expectNear } from "../near.ts";
import { cases, references } from "../references.ts";

// Made by tests/references/random/script.R: epiR.
const values = references("random");

describe("random sets against epiR", () => {
  it("the chance of finding and what finding none is worth", () => {
    type Given = [flockSize: number, lookedAt: number, design: number, sensitivity: number, prior: number];
    for (const [[flockSize, lookedAt, designPrevalence, sensitivity, prior], [chance, free]] of cases<Given, number[]>(
      values,
      "found",
    )) {
      const look = { flockSize, lookedAt, designPrevalence, sensitivity };
      const what = JSON.stringify(look);
      expectNear(chanceByMethod.formula(look), chance ?? NaN, 1e-11, what);
      expectNear(freedom(look, prior, "formula"), free ?? NaN, 1e-11, what);
      // The formula never promises more than there is.
      expect(exactDetectChance(look)).toBeGreaterThanOrEqual((chance ?? NaN) - 1e-12);
    }
  });

  it("sheep to look at to know a share", () => {
    type Given = [expected: number, precision: number, flockSize: number | null, confidence: number];
    for (const [[expected, precision, flockSize, confidence], sheep] of cases<Given, number>(values, "estimate")) {
      const plan = { expected, precision, flockSize: flockSize ?? undefined, confidence };
      expect(sampleToEstimate(plan), JSON.stringify(plan)).toBe(Math.ceil(sheep - 1e-9));
    }
  });
});
