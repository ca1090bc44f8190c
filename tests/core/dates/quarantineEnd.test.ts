import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dayOf } from "../../../src/cells/day.ts";
import { quarantineEnd } from "../../../src/core/dates/quarantineEnd.ts";

describe("quarantineEnd", () => {
  // 28 days, or 21 to 28: published advice, read. The dates: counted on the calendar.
  it.each([
    ["2026-03-01", 28, undefined, "2026-03-29"],
    ["2028-02-10", 21, undefined, "2028-03-02"],
    ["2026-12-20", 28, undefined, "2027-01-17"],
    ["2026-03-01", 28, "2026-03-10", "2026-04-07"],
    ["2026-03-01", 28, "2026-03-01", "2026-03-29"],
  ])("arrived %s, %i days, last case %s → %s", (arrived, days, lastCase, end) => {
    expect(quarantineEnd(dayOf(arrived), days, lastCase === undefined ? undefined : dayOf(lastCase))).toBe(dayOf(end));
  });

  it("refuses a case before the arrival", () => {
    expect(() => quarantineEnd(dayOf("2026-03-02"), 28, dayOf("2026-03-01"))).toThrow(
      "last_new_case: 1 Mar 2026 is before they arrived on 2 Mar 2026",
    );
  });

  it("starts the count again at the case", () => {
    const day = fc.integer({ min: 40_000, max: 60_000 });
    fc.assert(
      fc.property(day, fc.integer({ min: 1, max: 60 }), fc.integer({ min: 0, max: 100 }), (arrived, days, after) => {
        expect(quarantineEnd(arrived, days, arrived + after)).toBe(quarantineEnd(arrived + after, days, undefined));
        expect(quarantineEnd(arrived, days, arrived + after) - quarantineEnd(arrived, days, undefined)).toBe(after);
      }),
    );
  });
});
