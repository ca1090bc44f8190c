import { type Day, showDay } from "../../cells/day.ts";
import { Problem } from "../../cells/problem.ts";
import type { Watched } from "./kaplanMeier.ts";

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
 * watchedAnimals([46063, 46063], [46068, undefined], 46073)
 * // → [{ days: 5, sound: true }, { days: 10, sound: false }]
 */
export function watchedAnimals(
  treated: readonly Day[],
  soundOn: readonly (Day | undefined)[],
  asOf: Day,
): readonly Watched[] {
  return treated.map((start, index) => {
    const sound = soundOn[index];
    const fail = (argument: string, sentence: string): never => {
      throw new Problem(sentence, { argument, index });
    };
    if (start > asOf) fail("treated", `${showDay(start)} is after as_of, ${showDay(asOf)}; mend one of the two dates`);
    if (sound === undefined) return { days: asOf - start, sound: false };
    if (sound < start)
      fail("sound_on", `${showDay(sound)} is before the treatment on ${showDay(start)}; mend one of the two dates`);
    if (sound > asOf) fail("sound_on", `${showDay(sound)} is after as_of, ${showDay(asOf)}; mend one of the two dates`);
    return { days: sound - start, sound: true };
  });
}
