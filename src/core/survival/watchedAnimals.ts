import { type Day, showDay } from "../../cells/day.ts";
import { Problem } from "../../cells/problem.ts";
import type { Watched } from "./endsByDay.ts";

/**
 * How long each treated animal was watched: to the day it was sound, or while it is not to the day it left the flock, at
 * most to `asOf`.
 *
 * The day of treatment is day 0; sound the same day counts at day 0.
 *
 * @param treated - the day of each treatment
 * @param soundOn - the day it was sound, undefined while it is not
 * @param asOf - the day up to which the records are complete
 * @param leftOn - the day it left the flock, undefined while it is there
 * @throws Problem with the row when an animal was sound or left before it was treated, was sound after it had left, or was
 *   treated or sound after `asOf`
 * @example
 * [...watchedAnimals([46063, 46063], [46068, undefined], 46073)]
 * // → [{ days: 5, sound: true }, { days: 10, sound: false }]
 */
export function* watchedAnimals(
  treated: readonly Day[],
  soundOn: readonly (Day | undefined)[],
  asOf: Day,
  leftOn: readonly (Day | undefined)[] = [],
): Generator<Watched> {
  const records = { treated, soundOn, asOf, leftOn };
  for (const [index, start] of treated.entries()) {
    const fault = watchFault(records, index);
    if (fault !== undefined) throw fault;
    const sound = soundOn[index];
    if (sound === undefined) yield { days: Math.min(asOf, leftOn[index] ?? asOf) - start, sound: false };
    else yield { days: sound - start, sound: true };
  }
}

/** Treatments, a row each, and the day up to which they are complete. */
interface CureRecords {
  readonly treated: readonly Day[];
  readonly soundOn: readonly (Day | undefined)[];
  readonly asOf: Day;
  readonly leftOn?: readonly (Day | undefined)[] | undefined;
}

/** What is wrong with the days of one row: they cannot have followed each other so. */
export function watchFault({ treated, soundOn, asOf, leftOn = [] }: CureRecords, index: number): Problem | undefined {
  const start = treated[index] as Day;
  const sound = soundOn[index];
  const left = leftOn[index];
  if (start > asOf) return notFitting("treated", index, start, `after as_of, ${showDay(asOf)}`);
  if (left !== undefined && left < start)
    return notFitting("left_on", index, left, `before the treatment on ${showDay(start)}`);
  if (sound === undefined) return undefined;
  if (left !== undefined && left < sound)
    return notFitting("sound_on", index, sound, `after the animal left on ${showDay(left)}`);
  if (sound < start) return notFitting("sound_on", index, sound, `before the treatment on ${showDay(start)}`);
  return sound > asOf ? notFitting("sound_on", index, sound, `after as_of, ${showDay(asOf)}`) : undefined;
}

const notFitting = (argument: string, index: number, day: Day, why: string): Problem =>
  new Problem(`${showDay(day)} is ${why}; mend one of the two dates`, { argument, index });
