import type { Day } from "../../cells/day.ts";
import type { Tag } from "../tags/tagKey.ts";

/** Rows in the order of animal, then day. */
export interface RowsByAnimal {
  /** Row indexes; animal `i` has those from `starts[i]` up to `starts[i + 1]`. */
  readonly order: Int32Array;
  readonly starts: Int32Array;
  /** The first row of each animal as the records came. */
  readonly firstRow: readonly number[];
}

/**
 * Sorts records by animal, in order of first appearance, and by day within an animal; records of one day keep their order.
 *
 * Animals are counted and placed in one pass, so only each animal's own few records are compared.
 *
 * @example
 * [...rowsByAnimal([b, a, b], [46070, 46063, 46063]).order] // → [2, 0, 1]
 */
export function rowsByAnimal(tags: readonly Tag[], dates: readonly Day[]): RowsByAnimal {
  const animals = new Map<string, number>();
  const animalOf = new Int32Array(tags.length);
  const firstRow: number[] = [];
  const counts: number[] = [];
  for (let row = 0; row < tags.length; row++) {
    const { key } = tags[row] as Tag;
    let animal = animals.get(key);
    if (animal === undefined) {
      animal = firstRow.length;
      animals.set(key, animal);
      firstRow.push(row);
      counts.push(0);
    }
    animalOf[row] = animal;
    counts[animal] = (counts[animal] as number) + 1;
  }

  const starts = new Int32Array(firstRow.length + 1);
  for (let animal = 0; animal < firstRow.length; animal++)
    starts[animal + 1] = (starts[animal] as number) + (counts[animal] as number);
  const next = starts.slice();
  const order = new Int32Array(tags.length);
  for (let row = 0; row < tags.length; row++) {
    const animal = animalOf[row] as number;
    const place = next[animal] as number;
    order[place] = row;
    next[animal] = place + 1;
  }
  for (let animal = 0; animal < firstRow.length; animal++)
    sortByDay(order.subarray(starts[animal], starts[animal + 1]), dates);
  return { order, starts, firstRow };
}

function sortByDay(rows: Int32Array, dates: readonly Day[]): void {
  for (let at = 1; at < rows.length; at++) {
    // Records mostly come in order of date, and then there is nothing to do.
    if ((dates[rows[at] as number] as Day) < (dates[rows[at - 1] as number] as Day)) {
      rows.sort((a, b) => (dates[a] as Day) - (dates[b] as Day) || a - b);
      return;
    }
  }
}
