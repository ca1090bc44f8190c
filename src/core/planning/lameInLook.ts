import { Problem } from "../../cells/problem.ts";
import { lameAtLeast } from "./lameAtLeast.ts";
import { refuseBlindLook } from "./refuseBlindLook.ts";

export interface Inspection {
  /** Sheep in the flock, whole number from 1. */
  readonly flockSize: number;
  /** Sheep looked at, whole number from 0 to the flock's size. */
  readonly lookedAt: number;
  /** The share lame that is supposed, above 0. */
  readonly designPrevalence: number;
  /** Share of the lame sheep that a look at them finds, above 0; 1 is a perfect look. */
  readonly sensitivity: number;
}

/**
 * The lame sheep the flock is supposed to hold, once the look makes sense.
 *
 * @throws Problem when more sheep were looked at than the flock has, or design prevalence or sensitivity is 0
 * @example
 * lameInLook({ flockSize: 300, lookedAt: 10, designPrevalence: 0.05, sensitivity: 1 }) // → 15
 */
export function lameInLook({ flockSize, lookedAt, designPrevalence, sensitivity }: Inspection): number {
  const lame = lameAtLeast(flockSize, designPrevalence);
  refuseBlindLook(sensitivity);
  if (lookedAt > flockSize) {
    throw new Problem(`${lookedAt} is more than the ${flockSize} sheep of the flock; enter each sheep looked at once`, {
      argument: "looked_at",
    });
  }
  return lame;
}
