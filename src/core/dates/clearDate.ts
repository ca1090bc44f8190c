import type { Moment } from "../../cells/day.ts";
import { Problem } from "../../cells/problem.ts";

/** How the days of a withdrawal period are counted. */
export const countings = ["whole days", "from the hour"] as const;
export type Counting = (typeof countings)[number];

/**
 * The first day, or moment, at which a treated animal may go for food.
 *
 * A withdrawal period runs in 24-hour days from the last dose. Counted in whole days the hour of the dose is unknown and
 * may have been the last of its day, so the first sure day is `treated + days + 1`: a 6-day period gives the 7th day
 * after the dose (Finnish medicines agency). A period of 0 days gives the day of treatment itself. Counted from the
 * hour, the answer is the same hour, `days` days later.
 *
 * @param treated - the last dose, as a serial day; with its time as a fraction when counted from the hour
 * @param withdrawalDays - whole days, from the product's data sheet or the prescribing vet
 * @throws Problem when counted from the hour and there is no hour: midnight would be too early by up to a day
 * @example
 * clearDate(46063, 28, "whole days") // → 46092 (10 Feb 2026 → 11 Mar 2026)
 * clearDate(46063.4375, 28, "from the hour") // → 46091.4375 (10 Feb 2026 10:30 → 10 Mar 2026 10:30)
 */
export function clearDate(treated: Moment, withdrawalDays: number, counting: Counting): Moment {
  const day = Math.floor(treated);
  if (counting === "whole days") return withdrawalDays === 0 ? day : day + withdrawalDays + 1;
  if (treated === day)
    throw new Problem('the date has no hour; enter the date with its time, or count in "whole days"', {
      argument: "treated",
    });
  return treated + withdrawalDays;
}
