import { momentFromText } from "../../../cells/day.ts";

const months = "jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec";
const between = String.raw`\s*[-./\\,–—·' ]\s*`;

// Three groups of digits that can be a day, a month and a year in some order, with whatever between them.
const threeNumbers = new RegExp(
  `^(\\d{1,4})${between}(\\d{1,2})${between}(\\d{1,4})\\.?(?:[T ]+\\d{1,2}:\\d\\d.*)?$`,
  "i",
);
const twoNumbers = /^(\d{1,2})\s*[-/]\s*(\d{1,2})$|^(\d{1,2})\.\s?(\d{1,2})\.$/;
const monthInLetters = new RegExp(
  `^(?:(?:mon|tue|wed|thu|fri|sat|sun)[a-z]*[., ]+)?[\\d\\s./,'–—-]*(?:st|nd|rd|th)?(?:\\s+of)?[-./,\\s]*(?:${months})[a-z]{0,6}\\.?[-./,\\s]*[\\d\\s./,'–—-]*(?:st|nd|rd|th)?[-./,\\s]*[\\d']*$`,
  "i",
);

/**
 * Whether a text looks like a date and is none for a function: 14/03/2026, 3 Apr, 5.6.26. A text as 2026-03-14 or 14 Mar 2026 is one.
 *
 * @example
 * looksLikeDate("14.03.2026") // → true
 * looksLikeDate("2026-03-14") // → false
 */
export function looksLikeDate(text: string): boolean {
  const cell = text.trim();
  if (cell.length > 40 || !/\d/.test(cell) || momentFromText(cell) !== undefined) return false;
  const numbers = threeNumbers.exec(cell);
  if (numbers) return isDay(numbers.slice(1).map(Number));
  const two = twoNumbers.exec(cell);
  if (two)
    return canBe(
      two
        .slice(1)
        .filter((part) => part !== undefined)
        .map(Number),
    );
  return monthInLetters.test(cell);
}

const isDay = ([first = 0, second = 0, third = 0]: readonly number[]): boolean =>
  first > 31 ? canBe([second, third]) : canBe([first, second]);

/** A day and a month, in either order. */
const canBe = ([one = 0, other = 0]: readonly number[]): boolean =>
  Math.min(one, other) >= 1 && Math.min(one, other) <= 12 && Math.max(one, other) <= 31;
