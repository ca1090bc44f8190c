import type { UniverParts } from "./univerParts.ts";

/**
 * Whether the embedded spreadsheet would make a date of a text that is none for certain: 03/04/2026 is two days, and
 * 3 Apr is in no year.
 */
export function isUnclearDate(text: string, numfmt: UniverParts["core"]["numfmt"]): boolean {
  const pattern = numfmt.parseDate(text.trim())?.z;
  return pattern !== undefined && !isClear(pattern);
}

/** Whether dates of this pattern can be read in one way only: `yyyy-mm-dd`, or a month in letters with day and year. */
const isClear = (pattern: string): boolean =>
  pattern.startsWith("yyyy-mm-dd") || (/mmm/.test(pattern) && /yyyy/.test(pattern) && /\bd{1,2}\b/.test(pattern));
