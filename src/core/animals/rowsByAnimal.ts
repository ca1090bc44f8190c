import type { Day } from "../../cells/day.ts";
import { byAnimal } from "../words/byAnimal.ts";
import type { Tag } from "../words/tagKey.ts";

/** Rows in the order of animal, then day. */
export interface RowsByAnimal {
  /** Row indexes; animal `i` has those from `starts[i]` up to `starts[i + 1]`. */
  readonly order: Int32Array;
  readonly starts: Int32Array;
  /** The first row of each animal as the records came. */
  readonly firstRow: Int32Array;
}

/**
 * Sorts records by animal, in order of first appearance, and by day within an animal; records of one day keep their order.
 *
 * Animals are counted and placed in one pass, so only each animal's own few records are compared.
 *
 * @param animals - the keys of the animals wanted, each with {@link notMet}; it gets their numbers. Left out for all
 * @example
 * [...rowsByAnimal([b, a, b], [46070, 46063, 46063]).order] // → [2, 0, 1]
 */
export function rowsByAnimal(tags: readonly Tag[], dates: readonly Day[], animals?: Map<string, number>): RowsByAnimal {
  const numbers = byAnimal<number>();
  const animalOf = new Int32Array(tags.length);
  const firstRow = new Int32Array(tags.length);
  const counts = new Int32Array(tags.length);
  let count = 0;
  for (let row = 0; row < tags.length; row++) {
    const tag = tags[row] as Tag;
    let animal = numbers.get(tag);
    if (animal === undefined) {
      if (animals !== undefined && !animals.has(tag.key)) {
        animalOf[row] = notMet;
        continue;
      }
      animal = count++;
      numbers.set(tag, animal);
      animals?.set(tag.key, animal);
      firstRow[animal] = row;
    }
    animalOf[row] = animal;
    counts[animal] = (counts[animal] as number) + 1;
  }

  const starts = new Int32Array(count + 1);
  for (let animal = 0; animal < count; animal++)
    starts[animal + 1] = (starts[animal] as number) + (counts[animal] as number);
  const next = starts.slice();
  const order = new Int32Array(starts[count] as number);
  for (let row = 0; row < tags.length; row++) {
    const animal = animalOf[row] as number;
    if (animal === notMet) continue;
    const index = next[animal] as number;
    order[index] = row;
    next[animal] = index + 1;
  }
  for (let animal = 0; animal < count; animal++)
    sortByDay(order, starts[animal] as number, starts[animal + 1] as number, dates);
  return { order, starts, firstRow: firstRow.subarray(0, count) };
}

/** Stands for the number of an animal of which no record has been met yet. */
export const notMet = -1;

// An animal has few records, mostly in order of date: then each is moved past none or one, where it stands.
const few = 32;

/** Puts the rows from one place up to another in the order of their days, and of the rows themselves within a day. */
function sortByDay(rows: Int32Array, start: number, end: number, dates: readonly Day[]): void {
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
