import type { Moment } from "../cells/day.ts";
import { msPerDay } from "../cells/msPerDay.ts";

/** Says what day and hour it is, as a serial of the 1900 system. */
export type Clock = () => Moment;

/** The serial of 1 January 1970, from which a Date counts (ECMA-376 Part 1 §18.17.4.1, 1900 system). */
const epoch = 25_569;

/**
 * The day and hour that a clock on the wall shows where this computer is, to the second.
 *
 * @example
 * localClock(new Date(2026, 2, 14, 18, 0)) // → 46095.75, in whatever time zone
 */
export function localClock(now: Date = new Date()): Moment {
  // The day as if it were Greenwich's: a local midnight may not exist, and local days are not all of one length.
  const day = Date.UTC(now.getFullYear(), now.getMonth(), now.getDate()) / msPerDay + epoch;
  return day + (now.getHours() * 3600 + now.getMinutes() * 60 + now.getSeconds()) / 86_400;
}
