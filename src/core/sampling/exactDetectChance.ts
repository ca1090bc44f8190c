import expm1 from "@stdlib/math-base-special-expm1";
import log1p from "@stdlib/math-base-special-log1p";
import { hypergeometricDensity } from "../distributions/hypergeometricDensity.ts";
import { hypergeometricTails } from "../distributions/hypergeometricTails.ts";
import { type Look, lameInLook } from "./lameInLook.ts";

/**
 * The chance of finding at least one lame sheep, exactly: the lame sheep among those looked at follow the
 * hypergeometric distribution, and each is found with the chance `sensitivity`. It agrees with what SAMPLETOFIND asks for.
 *
 * @returns 0 to 1
 * @throws Problem as detectChance
 * @example
 * exactDetectChance({ flockSize: 10, lookedAt: 9, designPrevalence: 0.1, sensitivity: 1 }) // → 0.9
 */
export function exactDetectChance(look: Look): number {
  const { flockSize: N, lookedAt: n, sensitivity } = look;
  const draw = { N, M: lameInLook(look), n };
  if (n === 0) return 0;
  if (sensitivity === 1) return hypergeometricTails(1, draw).upper;
  const middle = (n * draw.M) / N;
  let found = 0;
  for (let x = Math.max(1, n + draw.M - N); x <= Math.min(n, draw.M); x++) {
    const density = hypergeometricDensity(x, draw);
    // Beyond the middle the chances only shrink: what is left no longer counts.
    if (x > middle && density < found * 1e-17) break;
    found -= density * expm1(x * log1p(-sensitivity));
  }
  return found;
}
