import { flockMark } from "./animals.ts";

/**
 * A tag as it is printed. Every spelling means the same animal to TAGKEY.
 *
 * @example
 * printedTag(42) // → "ZZ 0123456 00042"
 */
export const printedTag = (number: number): string => `ZZ 0${flockMark} ${fiveDigits(number)}`;

export const fiveDigits = (number: number): string => String(number).padStart(5, "0");
