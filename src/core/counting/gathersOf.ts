import type { Day } from "../../cells/day.ts";
import { Problem } from "../../cells/problem.ts";

/** The sheep of each gather, in columns of the same length. */
export interface Gathers {
  readonly lame: ArrayLike<number>;
  readonly seen: ArrayLike<number>;
}

/**
 * The gathers that rows of counts stand for: each row one, or where days are given all rows of a day one. Rows in which no
 * sheep was seen say nothing and are left out.
 *
 * @param lame lame sheep a row
 * @param seen sheep seen a row
 * @param dates the day of each row
 * @throws Problem when the days are fewer than the rows, or one is missing
 * @example
 * gathersOf([1, 2, 0], [10, 20, 30], [46000, 46000, 46030]) // → { lame: [3, 0], seen: [30, 30] }
 */
export function gathersOf(
  lame: ArrayLike<number>,
  seen: ArrayLike<number>,
  dates?: readonly (Day | undefined)[],
): Gathers {
  if (dates === undefined) return withLooks({ lame, seen });
  if (dates.length !== seen.length) {
    throw new Problem(`dates has ${dates.length} rows and seen has ${seen.length}; give both the same rows`, {
      argument: "dates",
    });
  }
  const placeOf = new Map<Day, number>();
  const byDay = { lame: [] as number[], seen: [] as number[] };
  for (let row = 0; row < dates.length; row++) {
    const day = dates[row];
    if (day === undefined) throw dateFault(dates, row);
    let place = placeOf.get(day);
    if (place === undefined) {
      place = placeOf.size;
      placeOf.set(day, place);
      byDay.lame.push(0);
      byDay.seen.push(0);
    }
    byDay.lame[place] = (byDay.lame[place] as number) + (lame[row] ?? 0);
    byDay.seen[place] = (byDay.seen[place] as number) + (seen[row] ?? 0);
  }
  return withLooks(byDay);
}

/** Mostly all of them, which are handed on without being copied. */
function withLooks({ lame, seen }: Gathers): Gathers {
  const looked = (_: unknown, row: number): boolean => (seen[row] as number) > 0;
  for (let row = 0; row < seen.length; row++)
    if (!looked(undefined, row))
      return { lame: Array.from(lame).filter(looked), seen: Array.from(seen).filter(looked) };
  return { lame, seen };
}

/** What is wrong with the day of one row, where days are given: it is missing. */
export const dateFault = (dates: readonly (Day | undefined)[] | undefined, index: number): Problem | undefined =>
  dates === undefined || dates[index] !== undefined
    ? undefined
    : new Problem(
        "it is blank, but the row holds a record; enter the day of the gather, or leave dates out altogether",
        {
          argument: "dates",
          index,
        },
      );
