import { noAnimal, orderByAnimal } from "../words/orderByAnimal.ts";
import type { TagColumn } from "./readTags.ts";

/**
 * Finds records entered twice: such a record has the same animal and day as the first, and differs in nothing else that
 * was read.
 *
 * @param when - the day of each record, undefined where it is not known
 * @param spelled - all that was read of a record, as one text
 * @returns the first record that a record repeats, by its row
 * @example
 * repeatedRecords({ values: [0, 0], firstRows: [0] }, () => 46063, () => "042, 46063").get(1) // → 0
 */
export function repeatedRecords(
  { values, firstRows }: Pick<TagColumn, "values" | "firstRows">,
  when: (row: number) => number | undefined,
  spelled: (row: number) => string,
): ReadonlyMap<number, number> {
  const dated = new Int32Array(values.length);
  const days = new Int32Array(values.length);
  const counts = new Int32Array(firstRows.length);
  for (let row = 0; row < dated.length; row++) {
    const animal = values[row];
    const day = when(row);
    if (animal === undefined || day === undefined) {
      dated[row] = noAnimal;
      continue;
    }
    dated[row] = animal;
    days[row] = Math.floor(day);
    counts[animal] = (counts[animal] as number) + 1;
  }
  const { order } = orderByAnimal(dated, counts, days);
  const found = new Map<number, number>();
  // Spelling records out costs much, so it is done only for those that share animal and day.
  let firstSpelled: Map<string, number> | undefined;
  for (let at = 1; at < order.length; at++) {
    const [before, row] = [order[at - 1] as number, order[at] as number];
    if (dated[before] !== dated[row] || days[before] !== days[row]) {
      firstSpelled = undefined;
      continue;
    }
    firstSpelled ??= new Map([[spelled(before), before]]);
    const record = spelled(row);
    const first = firstSpelled.get(record);
    if (first === undefined) firstSpelled.set(record, row);
    else found.set(row, first);
  }
  return found;
}
