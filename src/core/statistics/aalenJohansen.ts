import type { CurveStep } from "./cureSteps.ts";
import { animalsIn, type Ends } from "./endsByDay.ts";
import { logLogLimits } from "./logLogLimits.ts";
import { normalScore } from "./normalScore.ts";

/**
 * The share not sound by days since treatment, each animal sound on the day it was found so, when some were not watched to
 * the end and some left the flock lame. Those that left never became sound: leaving is a competing event, no end of watching.
 *
 * Aalen–Johansen, with the variance by the delta method, carried along from day to day; limits on the log(−log) scale of
 * the share not sound. Where none left it is Kaplan–Meier with Greenwood's variance.
 *
 * @param confidence 0 < confidence < 1
 * @returns a step for each day on which at least one became sound or left, in order
 * @see Aalen & Johansen 1978, Scand J Stat 5:141; Kaplan & Meier 1958, J Am Stat Assoc 53:457; from memory; shares and variances
 *   as in survfit of R's survival package
 * @example
 * aalenJohansen([{ day: 3, ended: 2, becameSound: 1, leftLame: 1, foundAfter: [] }], 0.95).map(({ leftLame }) => leftLame)
 * // → [0.5]
 */
export function aalenJohansen(ends: readonly Ends[], confidence: number): readonly CurveStep[] {
  const z = normalScore(confidence);
  const steps: CurveStep[] = [];
  let atRisk = animalsIn(ends);
  let soundSoFar = 0;
  // Shares still watched for (neither sound nor left), sound and left; variances of the first two with their covariance.
  let [open, left] = [1, 0];
  let [openOpen, openSound, soundSound] = [0, 0, 0];
  for (const { day, ended, becameSound, leftLame } of ends) {
    const sound = becameSound / atRisk;
    const either = (becameSound + leftLame) / atRisk;
    if (either > 0) {
      const rest = (atRisk - becameSound - leftLame) / atRisk;
      const square = (open * open) / atRisk;
      soundSound += 2 * sound * openSound + sound * sound * openOpen + square * sound * (1 - sound);
      openSound = rest * (openSound + sound * openOpen) - square * sound * rest;
      openOpen = openOpen * rest * rest + square * either * rest;
      left += (open * leftLame) / atRisk;
      open *= rest;
    }
    soundSoFar += becameSound;
    if (becameSound + leftLame > 0) {
      // The two parts add up to 1 but for rounding while none is sound.
      const stillLame = soundSoFar === 0 ? 1 : open + left;
      const limits = logLogLimits(stillLame, soundSound, z);
      steps.push({ day, atRisk, becameSound, stillLame, leftLame: left, variance: soundSound, limits });
    }
    atRisk -= ended;
  }
  return steps;
}
