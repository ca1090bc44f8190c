interface Ranked {
  /** 1 is the lowest share; equal shares share a rank. */
  readonly rank: number;
}

/**
 * Of each flock the share of the others that it does better than, as `FOOT.FLOCKRANK` gives it for one flock; from the
 * ranks, so that many flocks need one pass.
 *
 * @param flocks - two or more
 * @example
 * betterThanOthers([{ rank: 1 }, { rank: 2 }, { rank: 2 }]) // → [1, 0.25, 0.25]
 */
export function betterThanOthers(flocks: readonly Ranked[]): readonly number[] {
  const alike = new Map<number, number>();
  for (const { rank } of flocks) alike.set(rank, (alike.get(rank) ?? 0) + 1);
  return flocks.map(({ rank }) => {
    const same = alike.get(rank) ?? 1;
    const worse = flocks.length - (rank - 1) - same;
    return (2 * worse + (same - 1)) / 2 / (flocks.length - 1);
  });
}
