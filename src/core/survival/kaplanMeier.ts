import exp from "@stdlib/math-base-special-exp";
import ln from "@stdlib/math-base-special-ln";
import pow from "@stdlib/math-base-special-pow";
import { normalScore } from "../distributions/normalScore.ts";
import type { Interval } from "../prevalence/interval.ts";

/** How long one animal was watched, in days from its treatment, and whether it then was sound. */
export interface Watched {
  readonly days: number;
  readonly sound: boolean;
}

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
 * kaplanMeier([{ days: 3, sound: true }, { days: 5, sound: false }], 0.95)
 * // → [{ day: 3, atRisk: 2, becameSound: 1, stillLame: 0.5, limits: { low: 0.0059830876…, high: 0.9104100848… } }]
 */
export function kaplanMeier(animals: readonly Watched[], confidence: number): readonly CurveStep[] {
  const z = normalScore(confidence);
  const inOrder = [...animals].sort((a, b) => a.days - b.days);
  const steps: CurveStep[] = [];
  let stillLame = 1;
  let greenwood = 0;
  for (let start = 0; start < inOrder.length; ) {
    const day = (inOrder[start] as Watched).days;
    const atRisk = inOrder.length - start;
    let becameSound = 0;
    while (start < inOrder.length && (inOrder[start] as Watched).days === day) {
      if ((inOrder[start] as Watched).sound) becameSound++;
      start++;
    }
    if (becameSound === 0) continue;
    const left = atRisk - becameSound;
    stillLame *= left / atRisk;
    greenwood += becameSound / (atRisk * left);
    steps.push({ day, atRisk, becameSound, stillLame, limits: logLogLimits(stillLame, greenwood, z) });
  }
  return steps;
}

function logLogLimits(share: number, greenwood: number, z: number): Interval | undefined {
  if (share === 0 || share === 1) return undefined;
  const spread = exp((z * Math.sqrt(greenwood)) / -ln(share));
  return { low: pow(share, spread), high: pow(share, 1 / spread) };
}
