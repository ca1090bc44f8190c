import type { Day } from "../../cells/day.ts";
import { byAnimal } from "../words/byAnimal.ts";
import { type AnimalOrder, noAnimal, orderByAnimal } from "../words/orderByAnimal.ts";
import type { Tag } from "../words/tagKey.ts";

/** Rows in the order of animal, then day. */
export interface RowsByAnimal extends AnimalOrder {
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

  const firstRows = firstRow.subarray(0, count);
  return { ...orderByAnimal(animalOf, counts.subarray(0, count), dates), firstRow: firstRows };
}

/** Stands for the number of an animal of which no record has been met yet. */
export const notMet = noAnimal;
