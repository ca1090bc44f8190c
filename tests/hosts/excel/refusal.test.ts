import { expect, it } from "vitest";
import { catalogue } from "../../../functions/catalogue.ts";
import { refusal } from "../../../src/hosts/excel/refusal.ts";

const refuses = refusal(catalogue);

it("tells the sentence with which a function refuses, and nothing where it answers", () => {
  expect(refuses("FLOCKPREV", [21, 20])).toEqual({
    code: "#VALUE!",
    message: "lame: 21 is more than the 20 seen; enter the lame sheep among those seen",
  });
  expect(refuses("FLOCKPREV", [4, 20])).toBeUndefined();
  expect(refuses("FLOKPREV", [21, 20])).toBeUndefined();
});

it("reads days by the date system of the workbook", () => {
  // 32000 is 11 Aug 1987 where days are counted from 1900, which is refused as too long ago, and 12 Aug 1991 from 1904.
  expect(refuses("CLEARDATE", [32000, 28])?.message).toMatch(
    /^treated: 32000, the day 11 Aug 1987, is not a date from 1990-01-01/,
  );
  expect(refuses("CLEARDATE", [32000, 28], { dateSystem: 1904 })).toBeUndefined();
});
