import type { Day } from "../../cells/day.ts";
import { type Group, groups, year } from "./flockYear.ts";
import type { SeededRandom } from "./seededRandom.ts";

/** An invented animal. Its tag has country code 999, which no animal has. */
export interface Animal {
  /** The last digits of the tag, 1 to 99999. */
  readonly number: number;
  readonly group: Group;
  readonly from: Day;
  /** The last day it is in the flock. */
  readonly until: Day;
  /** How readily it goes lame: a few animals are lame again and again. */
  readonly readiness: number;
  readonly grownKg: number;
}

/** The flock mark of every invented tag. */
export const flockMark = "123456";

/** Every animal of the year. Lambs take numbers from 10001 and most are sold between August and October. */
export function inventedAnimals(random: SeededRandom): readonly Animal[] {
  let ewes = 0;
  let lambs = 10_000;
  return groups.flatMap((group) =>
    Array.from({ length: group.head }, (): Animal => {
      const number = group.lambs ? ++lambs : ++ewes;
      return {
        number,
        group,
        from: firstDayOf(group, random),
        until: group.lambs && random.happens(0.75) ? year.last - random.whole(0, 85) : year.last,
        readiness: group.readiness * (random.happens(0.1) ? 4 : 0.7),
        grownKg: group.lambs ? random.whole(36, 48) : random.whole(60, 86),
      };
    }),
  );
}

// Lambs are born over some weeks. The older sheep were there before the year, some of them lame when it began.
function firstDayOf(group: Group, random: SeededRandom): Day {
  if (group.lambs) return group.from + random.whole(0, 18);
  return group.from === year.first ? group.from - 60 : group.from;
}

/** Weight on a day: lambs grow, ewes stay as they are. Kilograms, to the half. */
export function weightOn(animal: Animal, day: Day): number {
  if (!animal.group.lambs) return animal.grownKg;
  const grown = 5 + 0.24 * (day - animal.from);
  return Math.round(Math.min(grown, animal.grownKg) * 2) / 2;
}
