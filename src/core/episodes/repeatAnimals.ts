import type { Day } from "../../cells/day.ts";
import { showDay } from "../../cells/day.ts";
import { Problem } from "../../cells/problem.ts";
import type { Tag } from "../tags/tagKey.ts";
import { type Case, cases } from "./cases.ts";

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
  const animals: Tally[] = [];
  let current: Tally | undefined;
  let animal: Tag | undefined;
  const counts = ({ first }: Case): boolean =>
    (from === undefined || first >= from) && (until === undefined || first <= until);
  // All cases of one animal stand together.
  for (const one of cases(tags, dates, gapDays)) {
    if (!counts(one)) continue;
    if (current !== undefined && animal === one.tag) {
      current.cases++;
      current.last = one.last;
    } else {
      animal = one.tag;
      current = { tag: one.tag.shown, cases: 1, first: one.first, last: one.last };
      animals.push(current);
    }
  }
  return animals.filter((one) => one.cases >= atLeast).sort((a, b) => b.cases - a.cases || b.last - a.last);
}

type Tally = { -readonly [K in keyof RepeatAnimal]: RepeatAnimal[K] };
