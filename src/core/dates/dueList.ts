import type { Day } from "../../cells/day.ts";
import { Doubt } from "../../cells/doubt.ts";
import { noTag } from "../words/faults.ts";
import type { Tag } from "../words/tagKey.ts";
import { type Done, isDone, recheckState } from "./recheckState.ts";
import { settledLooks } from "./settledLooks.ts";

export interface DueLook {
  /** "not known" where the tag is missing or cannot be read. */
  readonly tag: string;
  readonly due: Day | "not known";
  /** Days from `asOf` to the due day; negative when overdue, undefined when not known. */
  readonly days: number | undefined;
  /** How it stands; or what cannot be read, and in which row. */
  readonly state: string;
}

/** Second looks, a row a look; all columns have the same length. */
export interface SecondLooks {
  readonly tags: readonly (Tag | undefined | Doubt)[];
  /** The day of each, undefined where none is asked for. */
  readonly due: readonly (Day | undefined | Doubt)[];
  /** When it was done, undefined where it was not. */
  readonly done?: readonly (Done | undefined | Doubt)[] | undefined;
  /** The day of the treatment that each follows: with it, a later treatment stands for an earlier look. */
  readonly treated?: readonly (Day | undefined | Doubt)[] | undefined;
  /** How lame each is, on any scale that rises with lameness. */
  readonly score?: readonly (number | undefined | Doubt)[] | undefined;
}

/**
 * The second looks that are overdue, due, or due within `aheadDays`: first those of which something cannot be read, in the
 * order of their rows, then the longest overdue first. With scores the worst of a day stands first, and before it those
 * without one: a blank is not mild. Neither is a 0, which says sound of a sheep that is to be looked at, or was a blank
 * that a spreadsheet handed over as 0.
 *
 * @param rowOf - the row of the sheet for a place in the columns
 * @example
 * dueList(46070, { tags: [a], due: [46072] }, 7, (index) => index + 1)
 * // → [{ tag: a.shown, due: 46072, days: 2, state: "due in 2 days" }]
 */
export function dueList(
  asOf: Day,
  { tags, due, done, treated, score }: SecondLooks,
  aheadDays: number,
  rowOf: (index: number) => number,
): readonly DueLook[] {
  const notKnown: DueLook[] = [];
  const settled = treated && settledLooks({ tags, due, done, treated }, asOf);
  // A look's day and its row in one whole number: a typed array of these is put in order without a function that
  // compares them, and a day's rows stay in their order.
  const keys = new Float64Array(due.length);
  let count = 0;
  due.forEach((day, index) => {
    const when = done?.[index];
    if (day === undefined || (!(when instanceof Doubt) && isDone(when, asOf))) return;
    if (!(day instanceof Doubt) && day > asOf + aheadDays) return;
    if (settled?.by(index) !== undefined) return;
    const tag = tags[index] ?? new Doubt("tags", noTag);
    const doubt = firstDoubt(tag, day, when);
    if (doubt === undefined) {
      keys[count++] = (day as Day) * due.length + index;
      return;
    }
    notKnown.push({
      tag: tag instanceof Doubt ? "not known" : tag.shown,
      due: day instanceof Doubt ? "not known" : day,
      days: day instanceof Doubt ? undefined : day - asOf,
      state: doubt.inRow(rowOf(index)),
    });
  });
  const order = Array.from(keys.subarray(0, count).sort(), (key) => key % due.length);
  const dayOf = (index: number): Day => due[index] as Day;
  if (score) {
    const lame = (index: number): number => {
      const given = score[index];
      return typeof given === "number" && given > 0 ? given : Number.MAX_VALUE;
    };
    order.sort((one, other) => dayOf(one) - dayOf(other) || lame(other) - lame(one));
  }
  const met = new Set<number>();
  const known = order.flatMap((index): readonly DueLook[] => {
    const look = settled?.look(index);
    if (look !== undefined && met.has(look)) return [];
    if (look !== undefined) met.add(look);
    const day = dayOf(index);
    return [{ tag: (tags[index] as Tag).shown, due: day, days: day - asOf, state: recheckState(day, undefined, asOf) }];
  });
  return notKnown.length === 0 ? known : [...notKnown, ...known];
}

function firstDoubt(...values: readonly unknown[]): Doubt | undefined {
  return values.find((value) => value instanceof Doubt) as Doubt | undefined;
}
