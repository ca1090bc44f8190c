import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { treatLag } from "../../../src/core/animals/treatLag.ts";

// Within 3 days is prompt: read in the trade's guidance; the arithmetic is worked out by hand.
describe("treatLag", () => {
  it("gives median, share in time and untreated", () => {
    expect(treatLag([0, 0, 0, 0], [0, 3, 4, undefined], 3)).toEqual({ medianDays: 3, inTime: 2 / 3, untreated: 1 });
  });

  it("counts a sheep untreated for too long as late once as_of is known", () => {
    expect(treatLag([0, 0, 0, 4], [0, 3, undefined, undefined], 3, 6)).toEqual({
      medianDays: 1.5,
      inTime: 2 / 3,
      untreated: 2,
    });
  });

  it("leaves median and share open while none is treated", () => {
    expect(treatLag([5], [undefined], 3)).toEqual({ medianDays: undefined, inTime: undefined, untreated: 1 });
    expect(treatLag([5], [undefined], 3, 6)).toEqual({ medianDays: undefined, inTime: undefined, untreated: 1 });
    // Seen on day 5, it can still be treated in time on day 8.
    expect(treatLag([5], [undefined], 3, 8)).toEqual({ medianDays: undefined, inTime: undefined, untreated: 1 });
    expect(treatLag([5], [undefined], 3, 9)).toEqual({ medianDays: undefined, inTime: 0, untreated: 1 });
  });

  it("counts no sheep for the share whose days are not over, treated or not", () => {
    // Seen on days 0 and 6, as of day 8: only the three of day 0 are decided.
    const seen = [0, 0, 0, 6, 6, 6];
    expect(treatLag(seen, [1, 5, undefined, 6, 7, undefined], 3, 8).inTime).toBeCloseTo(1 / 3, 12);
    expect(treatLag(seen, [1, 5, undefined, 6, 7, undefined], 3, 10).inTime).toBeCloseTo(3 / 6, 12);
  });

  it("refuses a treatment before the seeing, days after as_of, and no records", () => {
    const at = (argument: string, index: number) => expect.objectContaining({ place: { argument, index } });
    expect(() => treatLag([46063, 46063], [46063, 46062], 3)).toThrow(at("treated", 1));
    expect(() => treatLag([46063], [46065], 3, 46064)).toThrow(at("treated", 0));
    expect(() => treatLag([46063], [undefined], 3, 46062)).toThrow(at("seen_lame", 0));
    expect(() => treatLag([], [], 3)).toThrow(expect.objectContaining({ code: "#N/A" }));
  });

  it("has as many waits below the median as above, and a share that grows with the days allowed", () => {
    const waits = fc.array(fc.integer({ min: 0, max: 30 }), { minLength: 1 });
    fc.assert(
      fc.property(waits, fc.integer({ min: 0, max: 30 }), (days, within) => {
        const seen = days.map(() => 46000);
        const treated = days.map((day) => 46000 + day);
        const { medianDays = NaN, inTime = NaN } = treatLag(seen, treated, within);
        expect(days.filter((day) => day < medianDays).length).toBeLessThanOrEqual(days.length / 2);
        expect(days.filter((day) => day > medianDays).length).toBeLessThanOrEqual(days.length / 2);
        expect(treatLag(seen, treated, within + 1).inTime).toBeGreaterThanOrEqual(inTime);
      }),
    );
  });
});
