import type { Day } from "../../cells/day.ts";
import { Problem } from "../../cells/problem.ts";
import type { Tag } from "../tags/tagKey.ts";
import { type Done, isDone, recheckState } from "./recheckState.ts";

export interface DueLook {
  readonly tag: string;
  readonly due: Day;
  /** Days from `asOf` to the due day; negative when overdue. */
  readonly days: number;
  readonly state: string;
}

/**
 * The second looks that are overdue, due, or due within `aheadDays`, the longest overdue first.
 *
 * @param due - a day for each record, undefined where no second look is asked for
 * @param done - when it was done, undefined where it was not
 * @throws Problem with the row when a second look is due but the record has no tag
 */
export function dueList(
  asOf: Day,
  tags: readonly (Tag | undefined)[],
  due: readonly (Day | undefined)[],
  done: readonly (Done | undefined)[] | undefined,
  aheadDays: number,
): readonly DueLook[] {
  // A look's day and its row in one whole number: a typed array of these is put in order without a function that
  // compares them, and a day's rows stay in their order.
  const keys = new Float64Array(due.length);
  let count = 0;
  due.forEach((day, index) => {
    if (day === undefined || day > asOf + aheadDays || isDone(done?.[index], asOf)) return;
    if (tags[index] === undefined)
      throw new Problem("it is blank, but a second look is due in this row; enter the tag of the animal", {
        argument: "tags",
        index,
      });
    keys[count++] = day * due.length + index;
  });
  return Array.from(keys.subarray(0, count).sort(), (key) => {
    const index = key % due.length;
    const day = (key - index) / due.length;
    return {
      tag: (tags[index] as Tag).shown,
      due: day,
      days: day - asOf,
      state: recheckState(day, undefined, asOf),
    };
  });
}
