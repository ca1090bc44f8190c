import type { Day } from "../../cells/day.ts";

/** Rows in the order of animal, then day. */
export interface AnimalOrder {
  /** Row indexes; animal `i` has those from `starts[i]` up to `starts[i + 1]`. */
  readonly order: Int32Array;
  readonly starts: Int32Array;
}

/** Stands for the number of an animal in a row that is to be passed over. */
export const noAnimal = -1;

/**
 * Sorts rows by the number of their animal, and by day within an animal; rows of one day keep their order.
 *
 * Each animal's rows are put in their place in one pass, so only its own few are compared.
 *
 * @param animalOf - the animal of each row, from 0; {@link noAnimal} for a row to pass over
 * @param counts - how many rows each animal has
 * @param dates - the day of each row
 * @example
 * [...orderByAnimal([0, 1, 0], [2, 1], [46070, 46063, 46063]).order] // → [2, 0, 1]
 */
export function orderByAnimal(
  animalOf: ArrayLike<number>,
  counts: ArrayLike<number>,
  dates: ArrayLike<Day>,
): AnimalOrder {
  const animals = counts.length;
  const starts = new Int32Array(animals + 1);
  for (let animal = 0; animal < animals; animal++)
    starts[animal + 1] = (starts[animal] as number) + (counts[animal] as number);
  const next = starts.slice();
  const order = new Int32Array(starts[animals] as number);
  for (let row = 0; row < animalOf.length; row++) {
    const animal = animalOf[row] as number;
    if (animal === noAnimal) continue;
    const index = next[animal] as number;
    order[index] = row;
    next[animal] = index + 1;
  }
  for (let animal = 0; animal < animals; animal++)
    sortByDay(order, starts[animal] as number, starts[animal + 1] as number, dates);
  return { order, starts };
}

// An animal has few records, mostly in order of date: then each is moved past none or one, where it stands.
const few = 32;

/** Puts the rows from one place up to another in the order of their days, and of the rows themselves within a day. */
function sortByDay(rows: Int32Array, start: number, end: number, dates: ArrayLike<Day>): void {
  if (end - start > few) {
    rows.subarray(start, end).sort((a, b) => (dates[a] as Day) - (dates[b] as Day) || a - b);
    return;
  }
  for (let at = start + 1; at < end; at++) {
    const row = rows[at] as number;
    const day = dates[row] as Day;
    let index = at;
    while (index > start && (dates[rows[index - 1] as number] as Day) > day) {
      rows[index] = rows[index - 1] as number;
      index--;
    }
    rows[index] = row;
  }
}
