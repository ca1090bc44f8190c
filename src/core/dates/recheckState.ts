import type { Day } from "../../cells/day.ts";

/** When a second look was done: its day, or just that it was (true) or was not (false). */
export type Done = Day | boolean;

/**
 * Whether a second look was done by a given day. A look dated later than that day was not done yet.
 *
 * @example
 * isDone(46070, 46071) // → true
 */
export const isDone = (done: Done | undefined, asOf: Day): boolean =>
  typeof done === "number" ? done <= asOf : done === true;

/**
 * How a second look stands on a day, in words.
 *
 * @example
 * recheckState(46070, undefined, 46067) // → "due in 3 days"
 * recheckState(46070, undefined, 46070) // → "due today"
 * recheckState(46070, undefined, 46072) // → "2 days overdue"
 * recheckState(46070, 46071, 46072) // → "done"
 */
export function recheckState(due: Day, done: Done | undefined, asOf: Day): string {
  if (isDone(done, asOf)) return "done";
  const days = due - asOf;
  if (days === 0) return "due today";
  return days > 0 ? `due in ${inDays(days)}` : `${inDays(-days)} overdue`;
}

const inDays = (days: number): string => (days === 1 ? "1 day" : `${days} days`);
