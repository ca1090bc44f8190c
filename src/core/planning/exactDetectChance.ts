import expm1 from "@stdlib/math-base-special-expm1";
import log1p from "@stdlib/math-base-special-log1p";
import { hypergeometricDensity } from "../statistics/hypergeometricDensity.ts";
import { hypergeometricTails } from "../statistics/hypergeometricTails.ts";
import { type Inspection, lameInLook } from "./lameInLook.ts";

/**
 * The chance of finding at least one lame sheep, exactly: the lame sheep among those looked at follow the
 * hypergeometric distribution, and each is found with the chance `sensitivity`. It agrees with what SAMPLETOFIND asks for.
 *
 * @returns 0 to 1
 * @throws Problem when more sheep were looked at than the flock has, or design prevalence or sensitivity is 0
 * @source Cameron & Baldock 1998, Prev Vet Med 34:1 (the hypergeometric chance with a look that errs)
 * @example
 * exactDetectChance({ flockSize: 10, lookedAt: 9, designPrevalence: 0.1, sensitivity: 1 }) // → 0.9
 */
export function exactDetectChance(look: Inspection): number {
  const { flockSize: N, lookedAt: n, sensitivity } = look;
  const M = lameInLook(look);
  if (n === 0) return 0;
  if (sensitivity === 1) return hypergeometricTails(1, { N, M, n }).upper;
  const missedOne = log1p(-sensitivity);
  const [least, most] = [Math.max(0, n + M - N), Math.min(n, M)];
  const mode = Math.min(Math.max(Math.floor(((n + 1) * (M + 1)) / (N + 2)), least), most);
  const top = hypergeometricDensity(mode, { N, M, n });
  let found = -top * expm1(mode * missedOne);
  // Outwards from the likeliest number, each density from the one before, until what is left no longer counts.
  for (let [x, density] = [mode, top]; x < most && density > found * 1e-17; x++) {
    density *= ((M - x) * (n - x)) / ((x + 1) * (N - M - n + x + 1));
    found -= density * expm1((x + 1) * missedOne);
  }
  for (let [x, density] = [mode, top]; x > least && density > found * 1e-17; x--) {
    density *= (x * (N - M - n + x)) / ((M - x + 1) * (n - x + 1));
    found -= density * expm1((x - 1) * missedOne);
  }
  return Math.min(found, 1);
}
