import { lastDay } from "../../cells/day.ts";

/**
 * Finds records entered twice: such a record has the same animal and day as the first, and differs in nothing else that
 * was read.
 *
 * @param spelled - all that was read of a record, as one text
 * @returns asked of each record in turn: the index of the first record like it, undefined when it is the first
 */
export function repeatFinder(spelled: (index: number) => string) {
  const animalNumber = new Map<number | string, number>();
  const firstOfDay = new Map<number, number>();
  const firstSpelled = new Map<string, number>();
  const several = -1;
  return (animal: number | string | undefined, when: number | undefined, index: number): number | undefined => {
    if (animal === undefined || when === undefined) return undefined;
    let number = animalNumber.get(animal);
    if (number === undefined) {
      number = animalNumber.size;
      animalNumber.set(animal, number);
    }
    // One number for animal and day, since texts put together anew for each row are slow to look up.
    const day = number * (lastDay + 1) + Math.floor(when);
    const first = firstOfDay.get(day);
    if (first === undefined) {
      firstOfDay.set(day, index);
      return undefined;
    }
    // Spelling records out costs much, so it is done only for those that share animal and day.
    if (first !== several) {
      firstSpelled.set(spelled(first), first);
      firstOfDay.set(day, several);
    }
    const record = spelled(index);
    const same = firstSpelled.get(record);
    if (same === undefined) firstSpelled.set(record, index);
    return same;
  };
}
