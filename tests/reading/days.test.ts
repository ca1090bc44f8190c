import { describe, expect, it } from "vitest";
import { dayOf, days1904 } from "../../src/cells/day.ts";
import { day, done, moment } from "../../src/reading/days.ts";
import { Refusal } from "../../src/reading/kind.ts";

const in1900 = { dayOffset: 0 };
const in1904 = { dayOffset: days1904 };

describe("a day", () => {
  it("is read from 1990 to the last hour of 2100, and not beyond", () => {
    const [first, last] = [dayOf("1990-01-01"), dayOf("2100-12-31")];
    expect(day.read(first, in1900)).toBe(first);
    expect(day.read(last + 0.999, in1900)).toBe(last);
    expect(moment.read(last + 0.999, in1900)).toBe(last + 0.999);
    expect(day.read("2100-12-31 23:59", in1900)).toBe(last);
    for (const cell of [first - 0.001, last + 1, "1989-12-31", "2101-01-01"])
      expect(() => day.read(cell, in1900)).toThrow("is not a date from 1990-01-01 to 2100-12-31");
    // A cell that shows a date holds a number, and the person sees the date.
    expect(() => day.read(dayOf("2206-06-10") - days1904, in1904)).toThrow(/^110464, the day 10 Jun 2206, is not/);
    expect(() => day.read(28, in1900)).toThrow(/^28 is not a date/);
  });

  it("is a number of the workbook's own date system, but text is the day it says", () => {
    const serial = dayOf("2028-02-29");
    expect(day.read(serial - days1904, in1904)).toBe(serial);
    expect(day.read("2028-02-29", in1904)).toBe(serial);
    // The serials of the two systems overlap: this one is another day in each.
    expect(day.read(serial, in1900)).toBe(serial);
    expect(day.read(serial, in1904)).toBe(dayOf("2032-03-01"));
  });

  it("is blank at 0, as some spreadsheets hand over a blank cell", () => {
    for (const kind of [day, moment, done])
      expect([0, "", null, " ", 1].map(kind.isBlank)).toEqual([true, true, true, true, false]);
  });

  it.each([true, "2026-02-29", "14/03/2026", "2026-3-14", "2026-03-14 24:00", { error: "#N/A" } as const])(
    "is never read from %j",
    (cell) => expect(() => day.read(cell, in1900)).toThrow(Refusal),
  );
});

describe("what was done", () => {
  it.each([
    [true, true],
    ["Yes", true],
    [" y ", true],
    ["done", true],
    [1, true],
    [false, false],
    ["no", false],
    ["N", false],
    ["2026-03-14 10:30", dayOf("2026-03-14")],
    [dayOf("2026-03-14") + 0.5, dayOf("2026-03-14")],
  ])("reads %j as %j", (cell, read) => expect(done.read(cell, in1900)).toBe(read));

  it("refuses what may mean either", () => {
    for (const cell of ["perhaps", 2, -1])
      expect(() => done.read(cell, in1900)).toThrow("enter the date it was done, or yes or no");
  });
});
