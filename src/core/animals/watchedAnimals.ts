import { type Day, showDay } from "../../cells/day.ts";
import { Problem } from "../../cells/problem.ts";
import type { Watched } from "../statistics/endsByDay.ts";

/** Treatments, a row each, and the day up to which they are complete. */
export interface CureRecords {
  /** The day of each treatment: day 0. Sound the same day counts at day 0. */
  readonly treated: readonly Day[];
  /** The day it was found sound, undefined while it is not. */
  readonly soundOn: readonly (Day | undefined)[];
  readonly asOf: Day;
  /** The day it left the flock, undefined while it is there. */
  readonly leftOn?: readonly (Day | undefined)[] | undefined;
  /**
   * The day of the last look at which it was still lame, undefined where it was not looked at again. Left out altogether, an
   * animal not found sound counts as lame until `asOf`.
   */
  readonly lookedAgain?: readonly (Day | undefined)[] | undefined;
}

/**
 * How long each treated animal was watched: to the day it was found sound; while it is not, to the day it left the flock, or to
 * the last look at it.
 *
 * @throws Problem with the row where days cannot have followed each other so
 * @example
 * [...watchedAnimals({ treated: [46063, 46063], soundOn: [46068, undefined], asOf: 46073 })]
 * // → [{ days: 5, end: "sound", lameUntil: undefined }, { days: 10, end: "lame" }]
 */
export function* watchedAnimals(records: CureRecords): Generator<Watched> {
  const { treated, soundOn, asOf, leftOn = [], lookedAgain } = records;
  for (const [index, start] of treated.entries()) {
    const fault = watchFault(records, index);
    if (fault !== undefined) throw fault;
    const [sound, left, look] = [soundOn[index], leftOn[index], lookedAgain?.[index]];
    if (sound !== undefined) {
      const lameUntil = look !== undefined && look < sound ? look - start : undefined;
      yield { days: sound - start, end: "sound", lameUntil };
    } else if (left !== undefined && left <= asOf) yield { days: left - start, end: "left" };
    // Never looked at again, it is known to be lame on the day of treatment only.
    else yield { days: (lookedAgain === undefined ? asOf : (look ?? start)) - start, end: "lame" };
  }
}

/** What is wrong with the days of one row: they cannot have followed each other so. */
export function watchFault(records: CureRecords, index: number): Problem | undefined {
  const { treated, soundOn, asOf, leftOn = [], lookedAgain = [] } = records;
  const start = treated[index] as Day;
  const [sound, left, look] = [soundOn[index], leftOn[index], lookedAgain[index]];
  if (start > asOf) return notFitting("treated", index, start, `after as_of, ${showDay(asOf)}`);
  if (left !== undefined && left < start)
    return notFitting("left_on", index, left, `before the treatment on ${showDay(start)}`);
  if (look !== undefined && look < start)
    return notFitting("looked_again", index, look, `before the treatment on ${showDay(start)}`);
  if (look !== undefined && left !== undefined && look > left)
    return notFitting("looked_again", index, look, `after the animal left on ${showDay(left)}`);
  if (look !== undefined && look > asOf)
    return notFitting("looked_again", index, look, `after as_of, ${showDay(asOf)}`);
  if (sound === undefined) return undefined;
  if (left !== undefined && left < sound)
    return notFitting("sound_on", index, sound, `after the animal left on ${showDay(left)}`);
  if (sound < start) return notFitting("sound_on", index, sound, `before the treatment on ${showDay(start)}`);
  return sound > asOf ? notFitting("sound_on", index, sound, `after as_of, ${showDay(asOf)}`) : undefined;
}

const notFitting = (argument: string, index: number, day: Day, why: string): Problem =>
  new Problem(`${showDay(day)} is ${why}; mend one of the two dates`, { argument, index });
