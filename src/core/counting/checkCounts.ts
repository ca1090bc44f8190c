import { Problem } from "../../cells/problem.ts";

/** What the user calls the two columns in the formula. */
export interface CountNames {
  readonly lame: string;
  readonly seen: string;
}

export const usualNames: CountNames = { lame: "lame", seen: "seen" };

/**
 * Refuses columns of different length and rows with more lame sheep than were seen.
 *
 * @param lame lame sheep a row, whole numbers from 0
 * @param seen sheep seen a row, whole numbers from 0
 * @param names the arguments' names for the message
 * @throws Problem naming the row
 * @example
 * checkCounts([21], [20]) // → throws "lame: 21 is more than the 20 seen; …"
 */
export function checkCounts(lame: ArrayLike<number>, seen: ArrayLike<number>, names: CountNames = usualNames): void {
  if (lame.length !== seen.length) {
    throw new Problem(
      `${names.lame} has ${lame.length} ${rows(lame.length)} and ${names.seen} has ${seen.length}; give both the same rows`,
      { argument: names.lame },
    );
  }
  for (let index = 0; index < lame.length; index++) {
    const fault = countFault(lame, seen, index, names);
    if (fault !== undefined) throw fault;
  }
}

/**
 * What is wrong with the counts of one row: more lame than seen.
 *
 * @example
 * countFault([21], [20], 0)?.sentence // → "21 is more than the 20 seen; enter the lame sheep among those seen"
 */
export function countFault(
  lame: ArrayLike<number>,
  seen: ArrayLike<number>,
  index: number,
  names: CountNames = usualNames,
): Problem | undefined {
  const count = lame[index] ?? 0;
  const all = seen[index] ?? 0;
  if (count <= all) return undefined;
  return new Problem(`${count} is more than the ${all} seen; enter the lame sheep among those seen`, {
    argument: names.lame,
    index,
  });
}

const rows = (count: number): string => (count === 1 ? "row" : "rows");
