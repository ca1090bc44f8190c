import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  dayOf,
  days1904,
  firstDay,
  isoText,
  lastDay,
  momentFromText,
  showDay,
  showMoment,
} from "../../src/cells/day.ts";

describe("days as serials", () => {
  // ECMA-376 Part 1 §18.17.4.1 (1900 system): 61 = 1900-03-01, 38749 = 2006-02-01; offset to the 1904 system 1462.
  it.each([
    ["1900-03-01", 61],
    ["2006-02-01", 38749],
    ["2024-02-29", 45351],
    ["2028-02-29", 46812],
  ])("%s is %i", (text, serial) => {
    expect(dayOf(text)).toBe(serial);
    expect(isoText(serial)).toBe(text);
  });

  it("knows the distance of the two date systems", () => {
    expect(dayOf("2006-02-01") - days1904).toBe(37287);
  });

  it("goes to text and back for every day that is accepted", () => {
    fc.assert(
      fc.property(fc.integer({ min: firstDay, max: lastDay }), (day) => {
        expect(momentFromText(isoText(day))).toBe(day);
      }),
    );
  });

  it("reads what it shows, with and without the hour, for every day and minute that is accepted", () => {
    fc.assert(
      fc.property(fc.integer({ min: firstDay, max: lastDay }), fc.integer({ min: 0, max: 1439 }), (day, minute) => {
        expect(momentFromText(showDay(day))).toBe(day);
        const moment = day + (minute * 60) / 86_400;
        expect(momentFromText(showMoment(moment))).toBe(moment);
      }),
    );
  });

  // Python's datetime: (date(2026, 10, 12) - date(1899, 12, 30)).days is 46307, and 46297 for the 2nd.
  it("takes a month written out for a date in its own form only", () => {
    expect(momentFromText("12 Oct 2026")).toBe(46307);
    expect(momentFromText(" 02 Oct 2026 ")).toBe(46297);
    expect(momentFromText("12 Oct 2026 10:30")).toBe(46307.4375);
  });

  it.each([
    "2026-02-29",
    "2026-13-01",
    "2026-3-1",
    "12/03/2026",
    "2026-03-14 25:00",
    "",
    "20260314",
    "29 Feb 2026",
    "31 Jun 2026",
    "0 Oct 2026",
    "12 Oct 26",
    "12 Okt 2026",
    "12 Foo 2026",
    "12 October 2026",
    "12-Oct-2026",
    "Oct 12 2026",
    "12 Oct",
    "12 Oct 2026 24:00",
    "12 Oct 2026 7:30",
  ])("does not take %j for a date", (text) => {
    expect(momentFromText(text)).toBeUndefined();
  });

  it("reads and shows the hour", () => {
    expect(momentFromText("2026-03-14 10:30")).toBe(46095.4375);
    expect(showMoment(46095.4375)).toBe("14 Mar 2026 10:30");
    expect(showMoment(46095)).toBe("14 Mar 2026");
    expect(showDay(46095.9)).toBe("14 Mar 2026");
  });

  it("reads minutes and seconds up to 59 and hours up to 23", () => {
    expect(momentFromText("2026-03-14T12:00:45")).toBe(46095.5 + 45 / 86_400);
    expect(momentFromText("2026-03-14 23:59:59")).toBe(46095 + 86_399 / 86_400);
    for (const hour of ["24:00", "10:60", "10:30:60", "10", "10:3"])
      expect([hour, momentFromText(`2026-03-14 ${hour}`)]).toEqual([hour, undefined]);
  });

  it("shows the next day for a moment within half a minute of midnight", () => {
    expect(showMoment(46095.99999)).toBe("15 Mar 2026");
  });

  it("refuses to build an example on a date that does not exist", () => {
    expect(() => dayOf("2026-02-30")).toThrow(RangeError);
  });
});
