import { type Day, showDay } from "../../cells/day.ts";
import { Problem } from "../../cells/problem.ts";
import type { Watched } from "./endsByDay.ts";

/**
 * How long each treated animal was watched: to the day it was sound, or to `asOf` while it is not.
 *
 * The day of treatment is day 0; sound the same day counts at day 0.
 *
 * @param treated - the day of each treatment
 * @param soundOn - the day it was sound, undefined while it is not
 * @param asOf - the day up to which the records are complete
 * @throws Problem with the row when an animal was sound before it was treated, or a day lies after `asOf`
 * @example
 * [...watchedAnimals([46063, 46063], [46068, undefined], 46073)]
 * // → [{ days: 5, sound: true }, { days: 10, sound: false }]
 */
export function* watchedAnimals(
  treated: readonly Day[],
  soundOn: readonly (Day | undefined)[],
  asOf: Day,
): Generator<Watched> {
  for (const [index, start] of treated.entries()) {
    const sound = soundOn[index];
    if (start > asOf) throw notFitting("treated", index, start, `after as_of, ${showDay(asOf)}`);
    if (sound === undefined) {
      yield { days: asOf - start, sound: false };
      continue;
    }
    if (sound < start) throw notFitting("sound_on", index, sound, `before the treatment on ${showDay(start)}`);
    if (sound > asOf) throw notFitting("sound_on", index, sound, `after as_of, ${showDay(asOf)}`);
    yield { days: sound - start, sound: true };
  }
}

const notFitting = (argument: string, index: number, day: Day, why: string): Problem =>
  new Problem(`${showDay(day)} is ${why}; mend one of the two dates`, { argument, index });
