import type { FlockCount } from "../statistics/flockTallies.ts";

/**
 * How much flocks differ beyond chance about an expected share, as the intra-flock correlation that widens a funnel.
 *
 * The additive between-flock variance by moments, from standardised residuals of which the outermost tenth on each side
 * is drawn in to the next (so that the outliers sought do not widen the limits that are to find them).
 *
 * @param flocks of which sheep were seen
 * @param share expected, above 0 and below 1
 * @returns 0 when the flocks differ no more than chance makes them; at most 0.99
 * @source Spiegelhalter 2005, Stat Med 24:1185, A.3 (additive overdispersion, winsorised residuals)
 * @example
 * flocksDiffer([{ lame: 2, seen: 40 }, { lame: 2, seen: 40 }], 0.05) // → 0
 */
export function flocksDiffer(flocks: readonly FlockCount[], share: number): number {
  const spread = share * (1 - share);
  const residuals = flocks
    .map(({ lame, seen }) => (lame - share * seen) / Math.sqrt(spread * seen))
    .sort((one, other) => one - other);
  const drawnIn = Math.floor(flocks.length / 10);
  const [least = 0, most = 0] = [residuals[drawnIn], residuals[flocks.length - 1 - drawnIn]];
  const squares = residuals.reduce((sum, z) => {
    const held = Math.min(Math.max(z, least), most);
    return sum + held * held;
  }, 0);
  const [all, square] = flocks.reduce(([sum, of], { seen }) => [sum + seen, of + seen * seen], [0, 0]);
  const variance = ((squares - (flocks.length - 1)) * spread) / (all - square / all);
  return Math.min(Math.max(variance / spread, 0), mostCorrelation);
}

// At 1 every flock has none or all lame, and there are no limits.
const mostCorrelation = 0.99;
