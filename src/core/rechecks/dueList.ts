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
  const looks: DueLook[] = [];
  due.forEach((day, index) => {
    if (day === undefined || day > asOf + aheadDays || isDone(done?.[index], asOf)) return;
    const tag = tags[index];
    if (tag === undefined)
      throw new Problem("it is blank, but a second look is due in this row; enter the tag of the animal", {
        argument: "tags",
        index,
      });
    looks.push({ tag: tag.shown, due: day, days: day - asOf, state: recheckState(day, undefined, asOf) });
  });
  return looks.sort((a, b) => a.due - b.due);
}
