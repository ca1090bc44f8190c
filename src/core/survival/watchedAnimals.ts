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
  for (const [index, start] of treated.entries()) {
    const sound = soundOn[index];
    if (start > asOf) throw notFitting("treated", index, start, `after as_of, ${showDay(asOf)}`);
    const left = leftOn[index];
    if (left !== undefined && left < start)
      throw notFitting("left_on", index, left, `before the treatment on ${showDay(start)}`);
    if (sound === undefined) {
      yield { days: Math.min(asOf, left ?? asOf) - start, sound: false };
      continue;
    }
    if (left !== undefined && left < sound)
      throw notFitting("sound_on", index, sound, `after the animal left on ${showDay(left)}`);
    if (sound < start) throw notFitting("sound_on", index, sound, `before the treatment on ${showDay(start)}`);
    if (sound > asOf) throw notFitting("sound_on", index, sound, `after as_of, ${showDay(asOf)}`);
    yield { days: sound - start, sound: true };
  }
}

const notFitting = (argument: string, index: number, day: Day, why: string): Problem =>
  new Problem(`${showDay(day)} is ${why}; mend one of the two dates`, { argument, index });
