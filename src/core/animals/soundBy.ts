import { nothingToReport } from "../../cells/problem.ts";
import { cureSteps } from "../statistics/cureSteps.ts";
import { animalsIn, type Ends } from "../statistics/endsByDay.ts";

export interface SoundShare {
  /** Share sound within the days, 0 to 1. */
  readonly share: number;
  /** Limits; undefined when none or all are sound by then, where the method has none. */
  readonly low: number | undefined;
  readonly high: number | undefined;
}

/**
 * The share of treated animals that are sound within `byDays` of treatment, animals still lame counted for as long as
 * they were watched, animals that left lame as never sound.
 *
 * @throws Problem (#N/A) when no animal was treated, or when none that is still lame was watched for so long
 * @see cureSteps for methods and sources
 * @example
 * soundBy([{ day: 3, ended: 1, becameSound: 1, leftLame: 0, foundAfter: [] }, { day: 5, ended: 1, becameSound: 0, leftLame: 1, foundAfter: [] }], 4, 0.95).share
 * // → 0.5
 */
export function soundBy(ends: readonly Ends[], byDays: number, confidence: number): SoundShare {
  const longest = ends.at(-1)?.day;
  if (longest === undefined) throw nothingToReport("no treated animal is recorded", { argument: "treated" });
  const curve = cureSteps(ends, confidence);
  const step = curve.filter(({ day }) => day <= byDays).at(-1);
  const stillLame = step?.stillLame ?? 1;
  if (byDays > longest && !decidedAtEnd(ends))
    throw nothingToReport(
      `no animal was watched for ${byDays} days and some were still lame; the longest is ${longest}, so ask for ${longest} or fewer`,
      { argument: "by_days" },
    );
  return {
    share: 1 - stillLame,
    low: step?.limits && 1 - step.limits.high,
    high: step?.limits && 1 - step.limits.low,
  };
}

/** Whether every animal watched to the last day was then sound or had left: nothing is open after it. */
function decidedAtEnd(ends: readonly Ends[]): boolean {
  const last = ends.at(-1);
  return last !== undefined && animalsIn([last]) === last.becameSound + last.leftLame;
}
