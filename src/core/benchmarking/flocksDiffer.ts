import exp from "@stdlib/math-base-special-exp";
import type { FlockCount } from "../statistics/flockTallies.ts";
import { gammaQuantile } from "../statistics/gammaQuantile.ts";
import { normalScore } from "../statistics/normalScore.ts";

/**
 * How much flocks may differ beyond chance about an expected share: intra-flock correlations that widen a funnel, each as
 * probable as the others.
 *
 * The additive between-flock variance by moments, from standardised residuals of which the outermost tenth on each side
 * is drawn in to the next (so that the outliers sought do not widen the limits that are to find them). Two departures
 * from the source. Drawing in makes residuals of flocks that are no outliers smaller too, so their squares are divided by
 * what is left of them under a normal distribution. And the variance was itself found from few flocks: it is given at
 * equal steps of a chi-square distribution with one degree of freedom fewer than flocks whose residuals stand as they
 * are, as Student's t stands for a normal distribution.
 *
 * @param flocks two or more of which sheep were seen
 * @param share expected, above 0 and below 1
 * @returns twelve, falling; 0 where flocks differ no more than chance makes them; at most 0.99
 * @source Spiegelhalter 2005, Stat Med 24:1185, A.3 (additive overdispersion, winsorised residuals)
 * @example
 * flocksDiffer([{ lame: 2, seen: 40 }, { lame: 2, seen: 40 }], 0.05)[0] // → 0
 */
export function flocksDiffer(flocks: readonly FlockCount[], share: number): readonly number[] {
  const spread = share * (1 - share);
  const residuals = flocks
    .map(({ lame, seen }) => (lame - share * seen) / Math.sqrt(spread * seen))
    .sort((one, other) => one - other);
  const drawnIn = Math.floor(flocks.length / 10);
  const [least = 0, most = 0] = [residuals[drawnIn], residuals[flocks.length - 1 - drawnIn]];
  const drawn = residuals.reduce((sum, z) => {
    const held = Math.min(Math.max(z, least), most);
    return sum + held * held;
  }, 0);
  const squares = drawn / leftOfSquares(drawnIn / flocks.length);
  const [all, square] = flocks.reduce(([sum, of], { seen }) => [sum + seen, of + seen * seen], [0, 0]);
  const freedom = flocks.length - 1 - 2 * drawnIn;
  return Array.from({ length: steps }, (_, step) => {
    const chiSquare = 2 * gammaQuantile("lower", (step + 0.5) / steps, freedom / 2);
    const correlation = ((squares * freedom) / chiSquare - (flocks.length - 1)) / (all - square / all);
    return Math.min(Math.max(correlation, 0), mostCorrelation);
  });
}

const steps = 12;

// At 1 every flock has none or all lame, and there are no limits.
const mostCorrelation = 0.99;

/** What is left of the mean square of normal values when a part on each side is drawn in to the next. */
function leftOfSquares(part: number): number {
  if (part === 0) return 1;
  const edge = normalScore(1 - 2 * part);
  const density = exp((-edge * edge) / 2) / Math.sqrt(2 * Math.PI);
  return 1 - 2 * part - 2 * edge * density + 2 * part * edge * edge;
}
