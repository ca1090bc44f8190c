import type { Day } from "../../cells/day.ts";
import { Doubt } from "../../cells/doubt.ts";
import type { Tag } from "../words/tagKey.ts";
import { type Done, isDone } from "./recheckState.ts";

/** Second looks beside the treatments that they follow, a row a treatment; all columns have the same length. */
export interface LooksOfTreatments {
  readonly tags: readonly (Tag | undefined | Doubt)[];
  /** The day of each second look, undefined where none is asked for. */
  readonly due: readonly (Day | undefined | Doubt)[];
  /** When it was done, undefined where it was not. */
  readonly done?: readonly (Done | undefined | Doubt)[] | undefined;
  /** The day of the treatment. */
  readonly treated: readonly (Day | undefined | Doubt)[];
}

export interface SettledLooks {
  /** How another row of the same animal has settled the look of a row; undefined where none has. */
  readonly by: (index: number) => "done" | "treated again" | undefined;
  /** One name for the rows of an animal with one day of treatment and one day to look; undefined for a row in doubt. */
  readonly look: (index: number) => string | undefined;
}

/**
 * Second looks that another row of the same animal has settled by a day.
 *
 * Whoever treats an animal again has looked at it: a later treatment, with a second look of its own, stands for the
 * earlier look. So does a treatment on or after the day of a look that follows no treatment. Rows of one day of treatment
 * and one day to look (two medicines) are one look, done when any of them is. A row of which tag, day or treatment cannot
 * be read settles nothing, and neither does one whose tag is only alike.
 *
 * @see common practice, no source
 * @example
 * settledLooks({ tags: [a, a], due: [46077, 46084], treated: [46070, 46077] }, 46080).by(0) // → "treated again"
 */
export function settledLooks({ tags, due, done, treated }: LooksOfTreatments, asOf: Day): SettledLooks {
  const keyOf = (index: number): string | undefined => {
    const tag = tags[index];
    return tag instanceof Doubt ? undefined : tag?.key;
  };
  const look = (index: number): string | undefined => {
    const [key, from, day] = [keyOf(index), treated[index], due[index]];
    return key !== undefined && typeof from === "number" && typeof day === "number"
      ? `${key} ${from} ${day}`
      : undefined;
  };
  const lastTreated = new Map<string, Day>();
  const lookedAt = new Set<string>();
  for (let index = 0; index < due.length; index++) {
    const [key, from, when] = [keyOf(index), treated[index], done?.[index]];
    if (key === undefined || typeof from !== "number" || due[index] === undefined) continue;
    if (from <= asOf && from > (lastTreated.get(key) ?? Number.NEGATIVE_INFINITY)) lastTreated.set(key, from);
    const name = when !== undefined && !(when instanceof Doubt) && isDone(when, asOf) ? look(index) : undefined;
    if (name !== undefined) lookedAt.add(name);
  }
  return {
    look,
    by: (index) => {
      const name = look(index);
      if (name !== undefined && lookedAt.has(name)) return "done";
      const last = lastTreated.get(keyOf(index) ?? "");
      const [from, day] = [treated[index], due[index]];
      if (last === undefined || from instanceof Doubt) return undefined;
      const isLater = from === undefined ? typeof day === "number" && last >= day : last > from;
      return isLater ? "treated again" : undefined;
    },
  };
}
