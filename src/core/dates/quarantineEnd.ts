import type { Day } from "../../cells/day.ts";
import { showDay } from "../../cells/day.ts";
import { Problem } from "../../cells/problem.ts";

/**
 * The first day bought-in sheep may join the flock: `days` after they arrived, or after their last new case, from which
 * the count starts again.
 *
 * @param lastNewCase - the last day on which a new case was seen among them; undefined when there was none
 * @throws Problem when the case is older than the arrival
 * @example
 * quarantineEnd(46082, 28, undefined) // → 46110 (arrived 1 Mar 2026 → 29 Mar 2026)
 * quarantineEnd(46082, 28, 46091) // → 46119 (a new case on 10 Mar 2026 → 7 Apr 2026)
 */
export function quarantineEnd(arrived: Day, days: number, lastNewCase: Day | undefined): Day {
  if (lastNewCase !== undefined && lastNewCase < arrived)
    throw new Problem(
      `${showDay(lastNewCase)} is before they arrived on ${showDay(arrived)}; mend the date, or leave it blank when there was no new case since`,
      { argument: "last_new_case" },
    );
  return (lastNewCase ?? arrived) + days;
}
