import { type CurveStep, cureSteps } from "../statistics/cureSteps.ts";
import { animalsIn, type Ends } from "../statistics/endsByDay.ts";

/**
 * The curve of the share not yet sound, ready to draw: it begins on day 0 and ends on the last day watched.
 *
 * @returns no rows when no animal was treated
 * @see cureSteps for methods and sources
 * @example
 * soundCurve([{ day: 3, ended: 1, becameSound: 1, leftLame: 0, foundAfter: [] }, { day: 5, ended: 1, becameSound: 0, leftLame: 0, foundAfter: [] }], 0.95).map(({ day, stillLame }) => [day, stillLame])
 * // → [[0, 1], [3, 0.5], [5, 0.5]]
 */
export function soundCurve(ends: readonly Ends[], confidence: number): readonly CurveStep[] {
  const lastDay = ends.at(-1)?.day;
  if (lastDay === undefined) return [];
  const steps = [...cureSteps(ends, confidence)];
  const stay = (day: number, like: CurveStep | undefined): CurveStep => ({
    day,
    atRisk: animalsIn(ends.filter((end) => end.day >= day)),
    becameSound: 0,
    stillLame: like?.stillLame ?? 1,
    leftLame: like?.leftLame ?? 0,
    variance: like === undefined ? 0 : like.variance,
    limits: like?.limits,
  });
  if (steps[0]?.day !== 0) steps.unshift(stay(0, undefined));
  if (steps.at(-1)?.day !== lastDay) steps.push(stay(lastDay, steps.at(-1)));
  return steps;
}
