import exp from "@stdlib/math-base-special-exp";
import ln from "@stdlib/math-base-special-ln";
import pow from "@stdlib/math-base-special-pow";
import { normalScore } from "../distributions/normalScore.ts";
import type { Interval } from "../prevalence/interval.ts";
import { animalsIn, type Ends } from "./endsByDay.ts";

/** The curve at one day on which an animal became sound. */
export interface CurveStep {
  readonly day: number;
  /** Animals still lame and still watched just before; one whose watching ends this day is among them. */
  readonly atRisk: number;
  readonly becameSound: number;
  /** Share still lame after this day. */
  readonly stillLame: number;
  /** Limits for the share still lame; undefined when it is 0 or 1, where the method has none. */
  readonly limits: Interval | undefined;
}

/**
 * The share still lame by days since treatment, when some animals were not watched to the end.
 *
 * Kaplan–Meier with Greenwood's variance and limits on the log(−log) scale, which stay within 0 and 1.
 *
 * @param confidence 0 < confidence < 1
 * @returns a step for each day on which at least one became sound, in order
 * @see Kaplan EL, Meier P (1958) J Am Stat Assoc 53:457; limits: Kalbfleisch & Prentice (1980), from memory; both as in
 *   survfit(conf.type = "log-log") of R's survival package
 * @example
 * kaplanMeier([{ day: 3, ended: 1, becameSound: 1 }, { day: 5, ended: 1, becameSound: 0 }], 0.95)
 * // → [{ day: 3, atRisk: 2, becameSound: 1, stillLame: 0.5, limits: { low: 0.0059830876…, high: 0.9104100848… } }]
 */
export function kaplanMeier(ends: readonly Ends[], confidence: number): readonly CurveStep[] {
  const z = normalScore(confidence);
  const steps: CurveStep[] = [];
  let atRisk = animalsIn(ends);
  let stillLame = 1;
  let greenwood = 0;
  for (const { day, ended, becameSound } of ends) {
    if (becameSound > 0) {
      const left = atRisk - becameSound;
      stillLame *= left / atRisk;
      greenwood += becameSound / (atRisk * left);
      steps.push({ day, atRisk, becameSound, stillLame, limits: logLogLimits(stillLame, greenwood, z) });
    }
    atRisk -= ended;
  }
  return steps;
}

function logLogLimits(share: number, greenwood: number, z: number): Interval | undefined {
  if (share === 0 || share === 1) return undefined;
  const spread = exp((z * Math.sqrt(greenwood)) / -ln(share));
  return { low: pow(share, spread), high: pow(share, 1 / spread) };
}
