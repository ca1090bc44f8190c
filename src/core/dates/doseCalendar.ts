import type { Day } from "../../cells/day.ts";
import { showDay } from "../../cells/day.ts";
import { Problem } from "../../cells/problem.ts";

export interface DoseDay {
  /** 1 for the first dose. */
  readonly dose: number;
  readonly date: Day;
}

// More than a dose a day for a year and a half: a slip of the hand, not a course.
const mostDoses = 600;

/**
 * The days of a course: the first dose, the second some days later, then one dose at equal intervals.
 *
 * @param secondAfterDays - whole days from the first to the second dose, 1 or more
 * @param repeatEveryDays - whole days between all later doses, 1 or more
 * @param until - the last day that is listed
 * @throws Problem when `until` lies before the first dose, or the list would not end within 600 doses
 * @example
 * doseCalendar(46082, 42, 182, 46400) // → [{ dose: 1, date: 46082 }, { dose: 2, date: 46124 }, { dose: 3, date: 46306 }]
 */
export function doseCalendar(
  first: Day,
  secondAfterDays: number,
  repeatEveryDays: number,
  until: Day,
): readonly DoseDay[] {
  if (until < first)
    throw new Problem(`${showDay(until)} is before the first dose on ${showDay(first)}; enter a later day`, {
      argument: "until",
    });
  const doses: DoseDay[] = [{ dose: 1, date: first }];
  for (let date = first + secondAfterDays; date <= until; date += repeatEveryDays) {
    if (doses.length === mostDoses)
      throw new Problem(
        `a dose every ${repeatEveryDays} ${repeatEveryDays === 1 ? "day" : "days"} until ${showDay(until)} is more than ${mostDoses} doses; enter a longer interval or an earlier last day`,
        { argument: "repeat_every_days" },
      );
    doses.push({ dose: doses.length + 1, date });
  }
  return doses;
}
