import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dayOf } from "../../../src/cells/day.ts";
import { doseCalendar } from "../../../src/core/dates/doseCalendar.ts";

describe("doseCalendar", () => {
  // Six weeks, then half-yearly; counted on the calendar. Common practice, no source.
  it("lists first, second and repeats", () => {
    expect(doseCalendar(dayOf("2028-01-20"), 42, 182, dayOf("2029-03-01"))).toEqual([
      { dose: 1, date: dayOf("2028-01-20") },
      { dose: 2, date: dayOf("2028-03-02") },
      { dose: 3, date: dayOf("2028-08-31") },
      { dose: 4, date: dayOf("2029-03-01") },
    ]);
  });

  it("refuses a last day before the first dose", () => {
    expect(() => doseCalendar(46082, 42, 182, 46081)).toThrow("until: 28 Feb 2026 is before the first dose");
  });

  it("refuses a list without an end in sight", () => {
    expect(doseCalendar(46082, 1, 1, 46082 + 599)).toHaveLength(600);
    expect(() => doseCalendar(46082, 1, 1, 46082 + 600)).toThrow("repeat_every_days: a dose every 1 day until");
  });

  it("keeps its intervals, stays within the last day, and leaves no dose out", () => {
    const interval = fc.integer({ min: 1, max: 400 });
    fc.assert(
      fc.property(interval, interval, fc.integer({ min: 0, max: 500 }), (second, repeat, span) => {
        const dates = doseCalendar(46_000, second, repeat, 46_000 + span).map(({ date }) => date);
        dates.forEach((date, index) => {
          const wanted = index === 0 ? 46_000 : (dates[index - 1] as number) + (index === 1 ? second : repeat);
          expect(date).toBe(wanted);
        });
        const last = dates.at(-1) as number;
        expect(last).toBeLessThanOrEqual(46_000 + span);
        expect(last + (dates.length === 1 ? second : repeat)).toBeGreaterThan(46_000 + span);
      }),
    );
  });
});
