import { describe, expect, it } from "vitest";
import { lameCost } from "../../../src/core/planning/lameCost.ts";
import { problemOf } from "../problemOf.ts";

const figures = {
  ewes: 100,
  shareLame: 0.1,
  casesPerLameYear: 5,
  treatmentPerCase: 2,
  minutesPerCase: 12,
  payPerHour: 15,
  lossPerCase: 10,
};

describe("lameCost", () => {
  // By hand: 100 × 10 % lame × 5 cases = 50 cases; 50 × 2 = 100; 50 × 12 minutes = 10 hours, × 15 = 150; 50 × 10 = 500;
  // 100 + 150 + 500 = 750; 750 / 100 = 7.5. At 2 % a fifth of each: 10, 20, 30, 100, 150, 1.5.
  it("adds up the lines, now and at the target", () => {
    expect(lameCost({ ...figures, target: 0.02 })).toMatchObject([
      { item: "cases", now: 50, atTarget: 10 },
      { item: "treatment", now: 100, atTarget: 20 },
      { item: "work", now: 150, atTarget: 30 },
      { item: "losses", now: 500, atTarget: 100 },
      { item: "total", now: 750, atTarget: 150 },
      { item: "total per ewe", now: 7.5, atTarget: 1.5 },
    ]);
  });

  // By hand: 5 % lame, 4 cases, 8 lost: 100 × .05 × 4 = 20 cases; 20 × 2 + 20 × .2 × 15 + 20 × 8 = 260. At the target
  // 8 cases: 16 + 24 + 64 = 104. High: 15 % lame: 75 cases; 75 × (2 + 3 + 10) = 1125; the target stays at 150.
  it("gives the lowest and the highest cost", () => {
    const lines = lameCost({
      ...figures,
      target: 0.02,
      low: { shareLame: 0.05, casesPerLameYear: 4, lossPerCase: 8 },
      high: { shareLame: 0.15 },
    });
    expect(lines[0]).toMatchObject({ lowNow: 20, highNow: 75, lowAtTarget: 8, highAtTarget: 10 });
    expect(lines[4]).toMatchObject({ now: 750, lowNow: 260, highNow: 1125, lowAtTarget: 104, highAtTarget: 150 });
    expect(lameCost({ ...figures, low: {}, high: {} })[0]?.lowNow).toBeUndefined();
  });

  it("refuses a lowest figure above the likely one, and a highest below", () => {
    const low = problemOf(() => lameCost({ ...figures, low: { lossPerCase: 11 } }));
    expect(low.message).toBe("loss_low: 11 is above the likely figure, 10; enter the lowest that it may be");
    const high = problemOf(() => lameCost({ ...figures, high: { casesPerLameYear: 4 } }));
    expect(high.message).toBe("cases_high: 4 is below the likely figure, 5; enter the highest that it may be");
  });

  it("leaves the target open where there is none", () => {
    expect(lameCost(figures).every(({ atTarget }) => atTarget === undefined)).toBe(true);
  });

  it("refuses figures below 0, and reports nothing without ewes", () => {
    const refused = problemOf(() => lameCost({ ...figures, payPerHour: -1 }));
    expect(refused.message).toBe("pay_per_hour: -1 is below 0; enter a figure from 0 on");
    expect(problemOf(() => lameCost({ ...figures, ewes: 0 })).code).toBe("#N/A");
  });
});
