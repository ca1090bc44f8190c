import type { Day } from "../../cells/day.ts";
import { dateFault } from "./gathersOf.ts";

/** Counts in columns of the same length, each of one of several groups. */
export interface PlacedGathers {
  /** Which group each is of, from 0. */
  readonly placeOf: ArrayLike<number>;
  readonly lame: ArrayLike<number>;
  readonly seen: ArrayLike<number>;
}

/**
 * The gathers of each group that rows of counts stand for: each row one, or where days are given all rows of a group and
 * day one, in order of their first row.
 *
 * @param rows lame sheep, sheep seen and group of each row
 * @param dates the day of each row, of the same length
 * @throws Problem when a day is missing
 * @example
 * gathersByPlace({ placeOf: [0, 1, 0], lame: [1, 2, 0], seen: [10, 20, 30] }, [46000, 46000, 46000])
 * // → { placeOf: [0, 1], lame: [1, 2], seen: [40, 20] }
 */
export function gathersByPlace(rows: PlacedGathers, dates: readonly (Day | undefined)[] | undefined): PlacedGathers {
  if (dates === undefined) return rows;
  const gathers = { placeOf: [] as number[], lame: [] as number[], seen: [] as number[] };
  const ofGroups: Map<Day, number>[] = [];
  for (let row = 0; row < dates.length; row++) {
    const day = dates[row];
    if (day === undefined) throw dateFault(dates, row);
    const place = rows.placeOf[row] as number;
    ofGroups[place] ??= new Map();
    const ofDays = ofGroups[place];
    let gather = ofDays.get(day);
    if (gather === undefined) {
      gather = gathers.seen.length;
      ofDays.set(day, gather);
      gathers.placeOf.push(place);
      gathers.lame.push(0);
      gathers.seen.push(0);
    }
    gathers.lame[gather] = (gathers.lame[gather] as number) + (rows.lame[row] as number);
    gathers.seen[gather] = (gathers.seen[gather] as number) + (rows.seen[row] as number);
  }
  return gathers;
}
