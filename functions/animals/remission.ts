import { dayOf } from "../../src/cells/day.ts";

/**
 * A published set for the examples, as if its weeks were days: Freireich et al (1963), the 21 of the treated arm, 9 with
 * an end and 12 still watched. All are watched to one day, so each begins so many days before it.
 */
const ended = [6, 6, 6, 7, 10, 13, 16, 22, 23];
const stillWatched = [6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35];
const asOf = dayOf("2026-06-01");

export const remission = {
  asOf,
  began: [...ended.map(() => asOf - 40), ...stillWatched.map((days) => asOf - days)],
  ended: [...ended.map((days) => asOf - 40 + days), ...stillWatched.map(() => null)],
};
