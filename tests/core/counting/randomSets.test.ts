import { describe, expect, it } from "vitest";
import { lookAgreement } from "../../../src/core/counting/lookAgreement.ts";
import { prevalenceChange } from "../../../src/core/counting/prevalenceChange.ts";
import { truePrevalence } from "../../../src/core/counting/truePrevalence.ts";
import { weightedPrevalence } from "../../../src/core/counting/weightedPrevalence.ts";
import { expectNear } from "../near.ts";
import { cases, references } from "../references.ts";

// Made by tests/references/random/script.R: R's prop.test and fisher.test, epiR, survey, numDeriv.
const values = references("random");

describe("random sets against R", () => {
  it("a change between two looks", () => {
    type Counts = [before: number, seenBefore: number, after: number, seenAfter: number, confidence: number];
    for (const [[x, n, y, m, confidence], [change, low, high, p]] of cases<Counts, [number, number, number, number]>(
      values,
      "change",
    )) {
      const found = prevalenceChange({ lame: [x], seen: [n] }, { lame: [y], seen: [m] }, confidence);
      const what = `${x} of ${n}, ${y} of ${m}, ${confidence}`;
      // A change is a difference of shares, held to the digits of the shares.
      expect(Math.abs(found.change - change), what).toBeLessThan(1e-13);
      expect(Math.abs(found.low - low), `low ${what}`).toBeLessThan(1e-12);
      expect(Math.abs(found.high - high), `high ${what}`).toBeLessThan(1e-12);
      expectNear(found.p, p, 1e-9, `p ${what}`);
    }
  });

  it("a look that errs", () => {
    type Look = [lame: number, seen: number, sensitivity: number, specificity: number, confidence: number];
    for (const [[x, n, sensitivity, specificity, confidence], [share, low, high]] of cases<Look, number[]>(
      values,
      "true",
    )) {
      const found = truePrevalence([x], [n], { sensitivity, specificity }, confidence);
      const what = `${x} of ${n}, ${sensitivity} and ${specificity}`;
      expectNear(found.share, share ?? NaN, 1e-9, what);
      expectNear(found.low, low ?? NaN, 1e-9, `low ${what}`);
      expectNear(found.high, high ?? NaN, 1e-9, `high ${what}`);
    }
  });

  it("two lookers", () => {
    type Seen = { readonly table: readonly (readonly number[])[]; readonly confidence: number };
    for (const [{ table, confidence }, wanted] of cases<Seen, number[]>(values, "lookers")) {
      const pairs = table.flatMap((row, one) =>
        row.flatMap((count, other) => Array.from({ length: count }, () => [`score ${one}`, `score ${other}`] as const)),
      );
      const [, kappa, ac1] = lookAgreement(
        pairs.map(([one]) => one),
        pairs.map(([, other]) => other),
        confidence,
      );
      const found = [kappa, ac1].flatMap((measure) => [measure?.value, measure?.low, measure?.high]);
      found.forEach((value, index) => {
        // How far from full agreement, which is what both measure; the derivatives of R are numerical.
        expectNear(1 - (value ?? NaN), 1 - (wanted[index] ?? NaN), 1e-7, JSON.stringify(table));
      });
    }
  });

  it("groups by weight", () => {
    type Groups = { readonly size: number[]; readonly lame: number[]; readonly seen: number[] };
    for (const [{ size, lame, seen }, [share, error]] of cases<Groups, number[]>(values, "weighted")) {
      const found = weightedPrevalence(size, lame, seen, 0.95);
      expectNear(found.share, share ?? NaN, 1e-12, `share of ${lame}`);
      expectNear(found.standardError ?? NaN, error ?? NaN, 1e-10, `error of ${lame}`);
    }
  });
});
