import { describe, expect, it } from "vitest";
import { dayOf, days1904 } from "../../../src/cells/day.ts";
import { hostCheck } from "../../../src/core/records/hostCheck.ts";

const day = dayOf("2026-03-14");
const line = (about: string, ...given: Parameters<typeof hostCheck>) =>
  hostCheck(...given).find((one) => one.about === about);

describe("hostCheck", () => {
  it.each([
    [[null], "a blank"],
    [["", null, " "], "a blank or spaces"],
  ])("needs no guard where blanks stay blank: %j", (blanks, arrivesAs) => {
    for (const about of ["blank cell", "SCOREPREV", "count of lame sheep", "withdrawal days"])
      expect(line(about, blanks, day, 0)).toMatchObject({ arrivesAs, todo: "nothing" });
  });

  it("asks for the guard as soon as one blank arrives as 0, and says what is at stake", () => {
    const guard = 'write IF(range="","",range) in place of range';
    expect(line("SCOREPREV", ["", 0], day, 0)).toMatchObject({ arrivesAs: "a blank or 0", todo: guard });
    expect(line("count of lame sheep", [0], day, 0)).toMatchObject({
      means: "a gather whose count is missing would count as one without a lame sheep",
      todo: guard,
    });
    expect(line("withdrawal days", [0], day, 0)).toMatchObject({
      means: expect.stringContaining("danger"),
      todo: guard,
    });
  });

  // ECMA-376 Part 1 §18.17.4.1: the two systems lie 1462 days apart.
  it("reads a date in either system and says what the other would show", () => {
    expect(line("date cell", [null], day, 0)).toMatchObject({
      means: "it is read as 14 Mar 2026, counted from 1900",
      todo: expect.stringContaining("if it shows 15 Mar 2030, the workbook counts from 1904"),
    });
    expect(line("date cell", [null], day - days1904, days1904)).toMatchObject({
      means: "it is read as 14 Mar 2026, counted from 1904",
      todo: "nothing, if the cell shows that day",
    });
    expect(line("date cell", [null], dayOf("1991-06-01") - days1904, 0)?.means).toBe(
      "it looks like 1 Jun 1991 in a workbook that counts from 1904",
    );
    expect(line("date cell", [null], 12, 0)?.means).toContain("no date from 1990 to 2100");
    const lastNoon = dayOf("2100-12-31") + 0.5;
    expect(line("date cell", [null], lastNoon, 0)?.means).toContain("it is read as 31 Dec 2100");
    expect(line("date cell", [null], lastNoon + 0.5, 0)?.means).toContain("no date from 1990 to 2100");
  });

  it.each([
    ["2026-03-14", "it is read as 14 Mar 2026"],
    ["03/04/2026", "it is refused as a date"],
  ])("says whether the text %s is read", (date, means) =>
    expect(line("date cell", [null], date, 0)?.means).toContain(means),
  );

  it("refuses cells that are not what was asked for", () => {
    expect(() => hostCheck([null, "x"], day, 0)).toThrow('blank_cell: it holds "x"');
    expect(() => hostCheck([null], 0, 0)).toThrow("date_cell: it is blank");
    expect(() => hostCheck([null], true, 0)).toThrow("date_cell: it holds TRUE");
    expect(() => hostCheck([null], { error: "#N/A" }, 0)).toThrow("date_cell: it holds #N/A");
  });
});
