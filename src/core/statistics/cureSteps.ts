import { aalenJohansen } from "./aalenJohansen.ts";
import type { Ends } from "./endsByDay.ts";
import type { Interval } from "./interval.ts";
import { turnbull } from "./turnbull.ts";

/** The curve at one day on which an animal was found sound, or left lame. */
export interface CurveStep {
  readonly day: number;
  /** Animals not yet found sound and still watched just before; one whose watching ends this day is among them. */
  readonly atRisk: number;
  readonly becameSound: number;
  /** Share not sound after this day: still lame, or left the flock lame. */
  readonly stillLame: number;
  /** Share that had left the flock lame, which is part of `stillLame`. */
  readonly leftLame: number;
  /** Of `stillLame`; undefined where the records do not settle it. */
  readonly variance: number | undefined;
  /** Limits for the share not sound; undefined when it is 0 or 1, or where the records do not settle them. */
  readonly limits: Interval | undefined;
}

/**
 * The share not yet sound by days since treatment, when some animals were not watched to the end, some left the flock lame,
 * and of some the day is known only between two looks.
 *
 * @param confidence 0 < confidence < 1
 * @returns a step for each day on which at least one was found sound or left lame, in order
 * @see aalenJohansen and turnbull for the methods
 * @example
 * cureSteps([{ day: 3, ended: 2, becameSound: 1, leftLame: 0, foundAfter: [] }], 0.95).map(({ stillLame }) => stillLame)
 * // → [0.5]
 */
export const cureSteps = (ends: readonly Ends[], confidence: number): readonly CurveStep[] =>
  ends.some(({ foundAfter }) => foundAfter.length > 0) ? turnbull(ends, confidence) : aalenJohansen(ends, confidence);
