/** A distribution over whole numbers with one peak, and what was observed. */
export interface PeakedCounts {
  readonly observed: number;
  readonly least: number;
  readonly most: number;
  /** The likeliest count. */
  readonly mode: number;
  readonly density: (x: number) => number;
  readonly tails: (x: number) => { readonly lower: number; readonly upper: number };
}

// Two counts that are equally likely must not be told apart by rounding: the tolerance R's exact tests use.
const tolerance = 1 + 1e-7;

/**
 * The two-sided p of an exact test: the chance of every count that is no more likely than the one observed.
 *
 * Finds the first such count on the other side of the peak by halving, so that the work does not grow with the counts.
 *
 * @returns 0 < p ≤ 1
 */
export function asUnlikelySum(counts: PeakedCounts): number {
  const { observed, least, most, mode, density, tails } = counts;
  const limit = density(observed) * tolerance;
  if (density(mode) <= limit) return 1;
  if (observed < mode) {
    const other = firstFrom(mode, most + 1, (x) => density(x) <= limit);
    return tails(observed).lower + (other > most ? 0 : tails(other).upper);
  }
  const other = -firstFrom(-mode, -least + 1, (x) => density(-x) <= limit);
  return tails(observed).upper + (other < least ? 0 : tails(other).lower);
}

/** The first whole number after `no` at which `holds`, known to hold at `yes`. */
function firstFrom(no: number, yes: number, holds: (x: number) => boolean): number {
  while (yes - no > 1) {
    const x = Math.floor((no + yes) / 2);
    if (holds(x)) yes = x;
    else no = x;
  }
  return yes;
}
