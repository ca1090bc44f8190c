import { Problem } from "../../cells/problem.ts";
import { hypergeometricDensity } from "../distributions/hypergeometricDensity.ts";
import { hypergeometricTails } from "../distributions/hypergeometricTails.ts";
import { lameAtLeast } from "./lameAtLeast.ts";
import { refuseBlindLook } from "./refuseBlindLook.ts";

export interface Look {
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
 * The chance of finding at least one lame sheep, if the flock has as many as the design prevalence says:
 * 1 − (1 − Se n / N)^d.
 *
 * A little less than the exact chance (see exactDetectChance), never more, so it does not promise too much.
 *
 * @returns 0 to 1
 * @throws Problem when more sheep were looked at than the flock has, or design prevalence or sensitivity is 0
 * @source MacDiarmid 1988, N Z Vet J 36:39
 * @example
 * detectChance({ flockSize: 1000, lookedAt: 58, designPrevalence: 0.05, sensitivity: 1 }) // → 0.9495866985…
 */
export function detectChance(look: Look): number {
  const lame = checkedLame(look);
  return -Math.expm1(lame * Math.log1p((-look.sensitivity * look.lookedAt) / look.flockSize));
}

/**
 * The same chance, exactly: the lame sheep among those looked at follow the hypergeometric distribution, and each is
 * found with the chance `sensitivity`. It agrees with what SAMPLETOFIND asks for.
 *
 * @returns 0 to 1
 * @throws Problem as detectChance
 * @example
 * exactDetectChance({ flockSize: 10, lookedAt: 9, designPrevalence: 0.1, sensitivity: 1 }) // → 0.9
 */
export function exactDetectChance(look: Look): number {
  const { flockSize: N, lookedAt: n, sensitivity } = look;
  const draw = { N, M: checkedLame(look), n };
  if (n === 0) return 0;
  if (sensitivity === 1) return hypergeometricTails(1, draw).upper;
  const middle = (n * draw.M) / N;
  let found = 0;
  for (let x = Math.max(1, n + draw.M - N); x <= Math.min(n, draw.M); x++) {
    const density = hypergeometricDensity(x, draw);
    // Beyond the middle the chances only shrink: what is left no longer counts.
    if (x > middle && density < found * 1e-17) break;
    found -= density * Math.expm1(x * Math.log1p(-sensitivity));
  }
  return found;
}

function checkedLame({ flockSize, lookedAt, designPrevalence, sensitivity }: Look): number {
  const lame = lameAtLeast(flockSize, designPrevalence);
  refuseBlindLook(sensitivity);
  if (lookedAt > flockSize) {
    throw new Problem(`${lookedAt} is more than the ${flockSize} sheep of the flock; enter each sheep looked at once`, {
      argument: "looked_at",
    });
  }
  return lame;
}
