import type { Gathers } from "./gathersOf.ts";

/**
 * Two gathers or three cannot show how much gathers of a flock differ. So as much as three degrees of freedom are added in
 * which they differed with an intra-gather correlation of 0.03, as at 5 % lame a standard deviation of 3.8 points would.
 * Both are the project's choice: with them a range holds the truth as docs/methods/counting.md shows.
 */
export const priorGathers = 3;
const priorCorrelation = 0.03;

export interface GatherSpread {
  readonly lame: number;
  readonly seen: number;
  /** How many there are. */
  readonly gathers: number;
  /** To how many gathers of equal size they amount: (Σ n)² / Σ n². */
  readonly weighty: number;
  /** How many times wider the pooled share varies than if every sheep were drawn by itself, 1 or more. */
  readonly inflation: number;
}

/**
 * How much wider the pooled share of several gathers varies than by chance: the variance of a ratio between clusters
 * (gathers) over the binomial one, joined with what is supposed before any gather is seen, weighted by degrees of freedom.
 *
 * Where none or all were lame the gathers show no spread, and 1 is joined with what is supposed.
 *
 * @param gathers counts, each with sheep seen
 * @source Cochran 1977, Sampling Techniques, 6.4 and 9A (ratio of clusters); Smyth 2004, Stat Appl Genet Mol Biol 3:3
 *   (joining a variance with a supposed one by degrees of freedom)
 * @example
 * gatherSpread({ lame: [4, 12], seen: [100, 100] })
 * // → { lame: 16, seen: 200, gathers: 2, weighty: 2, inflation: 4.06… }
 */
export function gatherSpread(gathers: Gathers): GatherSpread {
  const count = gathers.seen.length;
  let [lame, seen, sizes, squares] = [0, 0, 0, 0];
  for (let gather = 0; gather < count; gather++) {
    const n = gathers.seen[gather] as number;
    lame += gathers.lame[gather] as number;
    seen += n;
    sizes += n * n;
  }
  const share = lame / seen;
  for (let gather = 0; gather < count; gather++) {
    const off = (gathers.lame[gather] as number) - (gathers.seen[gather] as number) * share;
    squares += off * off;
  }
  return spreadOf({ lame, seen, gathers: count, sizes, squares });
}

/** What gathers add up to. */
interface GatherSums {
  readonly lame: number;
  readonly seen: number;
  readonly gathers: number;
  /** Σ n². */
  readonly sizes: number;
  /** Σ (x − n·share)², about the share of all of them together. */
  readonly squares: number;
}

/** The spread by what the gathers add up to; see `gatherSpread`. */
export function spreadOf({ lame, seen, gathers, sizes, squares }: GatherSums): GatherSpread {
  const weighty = (seen * seen) / sizes;
  if (gathers < 2) return { lame, seen, gathers, weighty, inflation: 1 };
  const share = lame / seen;
  const found = share === 0 || share === 1 ? 1 : (gathers * squares) / ((gathers - 1) * seen * share * (1 - share));
  return { lame, seen, gathers, weighty, inflation: joinedInflation(found, weighty - 1, sizes / seen) };
}

/**
 * A variance found (in times of chance) joined with the one supposed.
 *
 * @param found how many times wider than by chance, from the gathers
 * @param freedom the degrees of freedom on which that rests
 * @param size Σ n² / Σ n of the gathers
 * @returns 1 or more: never narrower than chance
 * @example
 * joinedInflation(1, 0, 101) // → 4
 */
export function joinedInflation(found: number, freedom: number, size: number): number {
  const supposed = 1 + (size - 1) * priorCorrelation;
  return Math.max((priorGathers * supposed + freedom * found) / (priorGathers + freedom), 1);
}
