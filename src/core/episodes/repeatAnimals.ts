import type { Day } from "../../cells/day.ts";
import { showDay } from "../../cells/day.ts";
import { Problem } from "../../cells/problem.ts";
import type { Tag } from "../tags/tagKey.ts";
import { rowsByAnimal } from "./rowsByAnimal.ts";

export interface RepeatAnimal {
  readonly tag: string;
  readonly cases: number;
  /** First day of the first case counted. */
  readonly first: Day;
  /** Last record of the last case counted. */
  readonly last: Day;
}

export interface RepeatRule {
  /** How many cases make a repeat animal, 1 or more. */
  readonly atLeast: number;
  readonly gapDays: number;
  /** Cases whose first record lies on or after this day count. */
  readonly from?: Day | undefined;
  /** Cases whose first record lies on or before this day count. */
  readonly until?: Day | undefined;
}

/**
 * The animals with several cases, most cases first; equals in order of latest record, newest first.
 *
 * A case counts when its first record lies within `from` to `until`: one that began before and runs on is not new.
 * Records outside still join what belongs together.
 *
 * @throws Problem when `from` is after `until`
 * @see two cases in a season, then consider culling: read, common practice
 * @example
 * repeatAnimals([a, a], [46063, 46100], { atLeast: 2, gapDays: 14 })
 * // → [{ tag: a.shown, cases: 2, first: 46063, last: 46100 }]
 */
export function repeatAnimals(
  tags: readonly Tag[],
  dates: readonly Day[],
  { atLeast, gapDays, from, until }: RepeatRule,
): readonly RepeatAnimal[] {
  if (from !== undefined && until !== undefined && from > until)
    throw new Problem(`${showDay(from)} is after until, ${showDay(until)}; change them over`, { argument: "from" });
  const animals: RepeatAnimal[] = [];
  const isCounted = (begun: Day): boolean =>
    (from === undefined || begun >= from) && (until === undefined || begun <= until);
  const { order, starts, firstRow } = rowsByAnimal(tags, dates);
  for (let animal = 0; animal < firstRow.length; animal++) {
    const end = starts[animal + 1] as number;
    let count = 0;
    let counted = false;
    let first: Day | undefined;
    let last: Day | undefined;
    let before: Day | undefined;
    // The rule of `cases`, without keeping the cases: most animals have too few to be listed.
    for (let at = starts[animal] as number; at < end; at++) {
      const day = dates[order[at] as number] as Day;
      if (before === undefined || day - before > gapDays) {
        counted = isCounted(day);
        if (counted) {
          count++;
          first ??= day;
        }
      }
      if (counted) last = day;
      before = day;
    }
    if (count >= atLeast && first !== undefined && last !== undefined)
      animals.push({ tag: (tags[firstRow[animal] as number] as Tag).shown, cases: count, first, last });
  }
  return animals.sort((a, b) => b.cases - a.cases || b.last - a.last);
}
