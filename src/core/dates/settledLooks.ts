import { type Day, lastDay } from "../../cells/day.ts";
import { Doubt } from "../../cells/doubt.ts";
import { byAnimal } from "../words/byAnimal.ts";
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
  /** One number for the rows of an animal with one day of treatment and one day to look; undefined for a row in doubt. */
  readonly look: (index: number) => number | undefined;
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
  const animals = byAnimal<TreatedAnimal>();
  const animalOf = (index: number): TreatedAnimal | undefined => {
    const tag = tags[index];
    return tag === undefined || tag instanceof Doubt ? undefined : animals.get(tag);
  };
  const look = (index: number): number | undefined => lookOf(animalOf(index), treated[index], due[index]);
  const lookedAt = new Set<number>();
  for (let index = 0; index < due.length; index++) {
    const [tag, from, when] = [tags[index], treated[index], done?.[index]];
    if (tag === undefined || tag instanceof Doubt || typeof from !== "number" || due[index] === undefined) continue;
    let animal = animals.get(tag);
    if (animal === undefined) {
      animal = { number: animals.values.length, last: Number.NEGATIVE_INFINITY };
      animals.set(tag, animal);
    }
    if (from <= asOf && from > animal.last) animal.last = from;
    const isLookedAt = when !== undefined && !(when instanceof Doubt) && isDone(when, asOf);
    const looked = isLookedAt ? lookOf(animal, from, due[index]) : undefined;
    if (looked !== undefined) lookedAt.add(looked);
  }
  return {
    look,
    by: (index) => {
      const [animal, from, day] = [animalOf(index), treated[index], due[index]];
      if (animal === undefined) return undefined;
      const ofAnimal = lookOf(animal, from, day);
      if (ofAnimal !== undefined && lookedAt.has(ofAnimal)) return "done";
      if (from instanceof Doubt) return undefined;
      const isLater = from === undefined ? typeof day === "number" && animal.last >= day : animal.last > from;
      return isLater ? "treated again" : undefined;
    },
  };
}

interface TreatedAnimal {
  /** Which animal it is, from 0. */
  readonly number: number;
  /** Its last day of treatment. */
  last: Day;
}

type DayCell = Day | undefined | Doubt;

// Animal and days in one whole number, since texts put together anew for each row are slow to look up. It stays below
// 2^53 for as many animals as a sheet has rows.
const lookOf = (animal: TreatedAnimal | undefined, from: DayCell, day: DayCell): number | undefined =>
  animal !== undefined && typeof from === "number" && typeof day === "number"
    ? (animal.number * spanOfDays + from) * spanOfDays + day
    : undefined;

const spanOfDays = lastDay + 1;
