/** Lame sheep among those seen in one flock. */
export interface FlockCount {
  readonly lame: number;
  readonly seen: number;
}

/** A run of places j, `from` to just before `to`, at each of which the same number of flocks have more than j. */
export interface Run {
  readonly from: number;
  readonly to: number;
  readonly flocks: number;
}

/** The counts of many flocks, turned so that sums run over counts and not over flocks. */
export interface FlockTallies {
  readonly lame: readonly Run[];
  readonly sound: readonly Run[];
  readonly seen: readonly Run[];
}

/**
 * How many flocks have more than 0, 1, 2 … lame, sound and seen sheep.
 *
 * @example
 * flockTallies([{ lame: 1, seen: 3 }, { lame: 0, seen: 1 }]).seen
 * // → [{ from: 0, to: 1, flocks: 2 }, { from: 1, to: 3, flocks: 1 }]
 */
export const flockTallies = (flocks: readonly FlockCount[]): FlockTallies => ({
  lame: runsOf(flocks.map(({ lame }) => lame)),
  sound: runsOf(flocks.map(({ lame, seen }) => seen - lame)),
  seen: runsOf(flocks.map(({ seen }) => seen)),
});

function runsOf(counts: readonly number[]): readonly Run[] {
  const sorted = Float64Array.from(counts).sort();
  const runs: Run[] = [];
  let from = 0;
  sorted.forEach((count, index) => {
    if (count > from) runs.push({ from, to: count, flocks: sorted.length - index });
    from = count;
  });
  return runs;
}
