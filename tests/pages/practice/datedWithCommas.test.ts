import { expect, it } from "vitest";
import { univerInNode } from "../../../src/hosts/headless/univerInNode.ts";
import { datedWithCommas } from "../../../src/pages/practice/grid/datedWithCommas.ts";

const { numfmt } = univerInNode().core;

it.each(["14,3,2026", "14, 3, 2026", "3,4,26"])("%s is a date that somebody wrote with commas", (text) => {
  expect(datedWithCommas(text)).toBe(true);
});

it("14,3,2026 is a number to the embedded spreadsheet", () => {
  expect(numfmt.parseValue("14,3,2026")?.v).toBe(1_432_026);
});

it.each(["1,432,026", "12,345", "1,5", "14.3.2026", "March 14, 2026", "99,99,2026"])("%s is not", (text) => {
  expect(datedWithCommas(text)).toBe(false);
});
