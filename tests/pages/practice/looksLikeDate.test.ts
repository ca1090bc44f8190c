import { describe, expect, it } from "vitest";
import { looksLikeDate } from "../../../src/pages/practice/grid/looksLikeDate.ts";

// How people write days in records: common practice, no source.
const dates = [
  "14/03/2026",
  "14.03.2026",
  "14-3-26",
  "03/04/2026",
  "5.6.26",
  "2026/3/14",
  "2026.03.14",
  "14 03 2026",
  "14,3,2026",
  "14\\3\\26",
  "14–03–2026",
  "3/4",
  "3-4",
  "3.4.",
  "3 Apr",
  "Apr 3",
  "3rd April",
  "14th of March 2026",
  "March 14, 2026",
  "14-Mar-26",
  "Mar-26",
  "Fri 14 March",
  "14. Mar. 2026",
  "14/03/2026 10:30",
];
const others = [
  "2026-03-14",
  "2026-03-14 10:30",
  "14 Mar 2026",
  "ZZ 0123456 00003",
  "0123456 00003",
  "12",
  "1.5",
  "2 of 3",
  "",
  "footrot",
  "LF",
  "99/99/2026",
  "32/13/26",
  "medicine A",
  "10 ml",
  "seen 3 May be better",
  "123-45-6789",
  "24/20",
];

describe("looksLikeDate", () => {
  it.each(dates)("%s looks like a date and is none for a function", (text) => expect(looksLikeDate(text)).toBe(true));
  it.each(others)("%s does not", (text) => expect(looksLikeDate(text)).toBe(false));
});
