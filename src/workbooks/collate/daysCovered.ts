import { type Day, dayOf } from "../../cells/day.ts";

interface Covered {
  /** The first day of the year that the book has records of. */
  readonly from: Day;
  /** Days from then up to the day the book is complete, or the end of the year; 0 where it ends before. */
  readonly days: number;
  /** Whether the book was begun in the course of the year. */
  readonly isBegunInYear: boolean;
  /** Days of the whole year. */
  readonly yearLength: number;
}

/**
 * The days of a year that a book covers: from its first record where it was begun in that year, so that no rate is too low
 * for the months in which nobody wrote anything down.
 *
 * @param earliest - the day of the first record of the book
 * @param asOf - the day up to which the book is complete
 * @example
 * daysCovered(2026, dayOf("2026-05-10"), dayOf("2026-10-31")).days // → 175
 */
export function daysCovered(year: number, earliest: Day | undefined, asOf: Day): Covered {
  const [first, next] = [dayOf(`${year}-01-01`), dayOf(`${year + 1}-01-01`)];
  const isBegunInYear = earliest !== undefined && earliest > first && earliest < next;
  const from = isBegunInYear ? earliest : first;
  return { from, days: Math.max(0, Math.min(asOf + 1, next) - from), isBegunInYear, yearLength: next - first };
}
