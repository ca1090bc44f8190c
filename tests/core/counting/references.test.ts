import { describe, expect, it } from "vitest";
import { prevalenceChange } from "../../../src/core/counting/prevalenceChange.ts";
import { prevalenceTrend } from "../../../src/core/counting/prevalenceTrend.ts";
import { truePrevalence } from "../../../src/core/counting/truePrevalence.ts";
import { weightedPrevalence } from "../../../src/core/counting/weightedPrevalence.ts";
import { finiteFlockInterval } from "../../../src/core/statistics/finiteFlockInterval.ts";
import { fisherExact } from "../../../src/core/statistics/fisherExact.ts";
import type { Interval } from "../../../src/core/statistics/interval.ts";
import { intervalMethods } from "../../../src/core/statistics/proportionInterval.ts";
import { expectNear } from "../near.ts";
import { cases, ownReferences } from "../references.ts";

// Made by tests/references/counting/make.py: definitions in 40-digit arithmetic, exact fractions, scipy where it means the same.
const values = ownReferences(import.meta.url);

describe("against the reference values", () => {
  it.each([
    ["wilson", 1e-10],
    ["exact", 1e-10],
    ["jeffreys", 1e-10],
  ] as const)("%s interval", (method, relative) => {
    for (const [[x, n, confidence], [low, high]] of cases<[number, number, number], [number, number]>(values, method)) {
      const found: Interval = intervalMethods[method](x, n, confidence);
      expectNear(found.low, low, relative, `low ${x}/${n} ${confidence}`);
      expectNear(found.high, high, relative, `high ${x}/${n} ${confidence}`);
    }
  });

  it("finite flock", () => {
    for (const [[x, n, N, c], [low, high]] of cases<[number, number, number, number], [number, number]>(
      values,
      "finite",
    )) {
      expect(finiteFlockInterval(x, n, N, c), `${x} of ${n} in ${N}, ${c}`).toEqual({ low: low / N, high: high / N });
    }
  });

  it("Fisher's exact p", () => {
    for (const [[x1, n1, x2, n2], p] of cases<[number, number, number, number], number>(values, "fisher")) {
      expectNear(fisherExact(x1, n1, x2, n2), p, 1e-10, `${x1}/${n1} ${x2}/${n2}`);
    }
  });

  it("change of a share", () => {
    const all = cases<[number, number, number, number, number], [number, number, number]>(values, "newcombe");
    for (const [[x1, n1, x0, n0, c], [change, low, high]] of all) {
      const found = prevalenceChange({ lame: [x0], seen: [n0] }, { lame: [x1], seen: [n1] }, c);
      // A difference of shares is held to the last digits of the shares, not of the difference.
      expect(Math.abs(found.change - change)).toBeLessThan(1e-15);
      expect(Math.abs(found.low - low)).toBeLessThan(1e-14);
      expect(Math.abs(found.high - high)).toBeLessThan(1e-14);
    }
  });

  it("trend", () => {
    const all = cases<[number[], number[], number[]], [number, number, number]>(values, "trend");
    for (const [[dates, lame, seen], [change, z, p]] of all) {
      const found = prevalenceTrend(dates, lame, seen, "chance");
      // Without a trend the sums cancel to rounding.
      if (Math.abs(z) < 1e-9) expect(Math.abs(found.z)).toBeLessThan(1e-9);
      else {
        expectNear(found.changePer30Days, change, 1e-10, "change");
        expectNear(found.z, z, 1e-10, "z");
      }
      expectNear(found.p, p, 1e-9, "p");
    }
  });

  it("true share", () => {
    type Look = [number, number, number, number, number, (number | null)?, (number | null)?];
    for (const [[x, n, se, sp, c, seFrom, spFrom], expected] of cases<Look, [number, number, number]>(
      values,
      "trueShare",
    )) {
      const look = {
        sensitivity: se,
        specificity: sp,
        sensitivityFrom: seFrom ?? undefined,
        specificityFrom: spFrom ?? undefined,
      };
      const { share, low, high } = truePrevalence([x], [n], look, c);
      [share, low, high].forEach((found, index) => {
        expect(
          Math.abs(found - (expected[index] ?? NaN)),
          `${x}/${n} ${se} from ${seFrom} ${sp} from ${spFrom}`,
        ).toBeLessThan(2e-14);
      });
    }
  });

  it("strata", () => {
    type Strata = [number[], number[], number[], number];
    for (const [[size, lame, seen, c], expected] of cases<Strata, [number, number, number, number]>(values, "strata")) {
      const [share, error, low, high] = expected;
      const found = weightedPrevalence(size, lame, seen, c);
      expectNear(found.share, share, 1e-12, "share");
      expectNear(found.standardError ?? NaN, error, 1e-10, "standard error");
      // A limit is the share less a distance: held to the digits of the share.
      expect(Math.abs(found.low - low)).toBeLessThan(1e-14);
      expect(Math.abs(found.high - high)).toBeLessThan(1e-14);
    }
  });
});
