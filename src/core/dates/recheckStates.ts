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
): readonly (string | undefined)[] => {
  // Days come again and again, and so do the words for them.
  const words = new Map<Day, string>();
  const wordsFor = (day: Day): string => {
    const known = words.get(day);
    if (known !== undefined) return known;
    const state = recheckState(day, undefined, asOf);
    words.set(day, state);
    return state;
  };
  return due.map((day, index) => {
    const when = done[index];
    const isOwn = !(when instanceof Doubt) && isDone(when, asOf);
    if (!isOwn && day !== undefined) {
      const by = settled?.by(index);
      if (by !== undefined) return by;
    }
    if (when instanceof Doubt) return when.sentence;
    if (isOwn) return "done";
    if (day instanceof Doubt) return day.sentence;
    return day === undefined ? undefined : wordsFor(day);
  });
};
