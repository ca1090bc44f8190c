import type { Day } from "../../cells/day.ts";
import { Doubt } from "../../cells/doubt.ts";
import { type Done, isDone, recheckState } from "./recheckState.ts";
import type { SettledLooks } from "./settledLooks.ts";

/**
 * How the second look of each record stands, or what is wrong with its row in words; undefined where none is due or done.
 *
 * @param settled - which looks another row has settled, where tags and treatments are known
 * @example
 * recheckStates([46070, undefined], [undefined, undefined], 46072) // → ["2 days overdue", undefined]
 */
export const recheckStates = (
  due: readonly (Day | undefined | Doubt)[],
  done: readonly (Done | undefined | Doubt)[],
  asOf: Day,
  settled?: Pick<SettledLooks, "by">,
): readonly (string | undefined)[] =>
  due.map((day, index) => {
    const when = done[index];
    const isOwn = !(when instanceof Doubt) && isDone(when, asOf);
    if (!isOwn && day !== undefined) {
      const by = settled?.by(index);
      if (by !== undefined) return by;
    }
    if (when instanceof Doubt) return when.sentence;
    if (isOwn) return "done";
    if (day instanceof Doubt) return day.sentence;
    return day === undefined ? undefined : recheckState(day, when, asOf);
  });
