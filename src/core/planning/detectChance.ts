import expm1 from "@stdlib/math-base-special-expm1";
import log1p from "@stdlib/math-base-special-log1p";
import { type Inspection, lameInLook } from "./lameInLook.ts";

/**
 * The chance of finding at least one lame sheep, if the flock has as many as the design prevalence says:
 * 1 − (1 − Se n / N)^d, the usual formula.
 *
 * A little less than the exact chance (see exactDetectChance), never more, so it does not promise too much.
 *
 * @returns 0 to 1
 * @throws Problem when more sheep were looked at than the flock has, or design prevalence or sensitivity is 0
 * @source MacDiarmid 1988, N Z Vet J 36:39
 * @example
 * detectChance({ flockSize: 1000, lookedAt: 58, designPrevalence: 0.05, sensitivity: 1 }) // → 0.9495866985…
 */
export function detectChance(look: Inspection): number {
  const lame = lameInLook(look);
  return -expm1(lame * log1p((-look.sensitivity * look.lookedAt) / look.flockSize));
}
