import type { UniverParts } from "./univerParts.ts";

/**
 * Whether the embedded spreadsheet would make a date of a text that is none for certain: 03/04/2026 is two days, and
 * 3 Apr is in no year.
 */
export function isUnclearDate(text: string, numfmt: UniverParts["core"]["numfmt"]): boolean {
  // Reading a date takes long, and most texts are none.
  if (!/\d/.test(text) || /^\s*\d{4}-\d\d-\d\d/.test(text)) return false;
  const pattern = numfmt.parseDate(text.trim())?.z;
  return pattern !== undefined && !isClear(pattern);
}

/** Whether dates of this pattern can be read in one way only: the year first, or a month in letters with day and year. */
const isClear = (pattern: string): boolean =>
  /^yyyy\W+m{1,2}\W+d{1,2}/.test(pattern) ||
  (/mmm/.test(pattern) && /yyyy/.test(pattern) && /\bd{1,2}\b/.test(pattern));
