import { looksLikeDate } from "./looksLikeDate.ts";

/**
 * Whether a text is a date with commas between its numbers, which the embedded spreadsheet takes for one large number.
 *
 * @example
 * datedWithCommas("14,3,2026") // → true
 * datedWithCommas("1,432,026") // → false
 */
export const datedWithCommas = (text: string): boolean => /^[\d\s,]*,[\d\s,]*$/.test(text) && looksLikeDate(text);
