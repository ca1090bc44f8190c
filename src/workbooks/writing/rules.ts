import type { Rule } from "./sheetAuthor.ts";

/** What may be typed into cells that several workbooks have. */
export const rules = {
  day: { of: { date: ["DATE(1990,1,1)", "DATE(2100,12,31)"] }, words: "Type a date, such as 2026-03-14." },
  innerShare: { of: { number: ["0.0001", "0.9999"] }, words: "Type a share above 0 and below 1, such as 2%." },
  share: { of: { number: ["0", "1"] }, words: "Type a share from 0 to 1, such as 5%." },
  sheep: { of: { whole: ["0", "1000000"] }, words: "Type a whole number of sheep." },
  amount: { of: { number: ["0.001", "10000"] }, words: "Type a number above 0, without a unit." },
  percent: { of: { number: ["0.5", "100"] }, words: "Type a percentage: 3 for 3 %." },
  days: { of: { whole: ["0", "365"] }, words: "Type a whole number of days, 0 to 365." },
  yesNo: { of: { list: '"yes,no"' }, words: "Type yes or no." },
} as const satisfies Record<string, Rule>;
