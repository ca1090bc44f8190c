import { type Day, dayOf, isoText } from "../../cells/day.ts";
import type { Animal } from "./animals.ts";
import { groups, year } from "./flockYear.ts";
import type { LameSpell } from "./lameSpells.ts";
import type { SeededRandom } from "./seededRandom.ts";

/** One group gathered on one day. */
export interface Gather {
  readonly date: Day;
  readonly group: string;
  readonly lame: number;
  readonly seen: number;
}

/** A gather of every group in every month, groups a day or two apart; a few animals are always missed. */
export function monthlyGathers(
  animals: readonly Animal[],
  spells: readonly LameSpell[],
  random: SeededRandom,
): readonly Gather[] {
  return monthStarts().flatMap((start) =>
    groups.flatMap((group, index): readonly Gather[] => {
      const date = start + 3 + 2 * index + random.whole(0, 2);
      const there = animals.filter((animal) => animal.group === group && animal.from <= date && date <= animal.until);
      const looked = new Set(there.filter(() => random.happens(0.97)));
      if (looked.size === 0) return [];
      const lame = spells.filter((spell) => looked.has(spell.animal) && isLameOn(spell, date));
      return [{ date, group: group.name, lame: lame.length, seen: looked.size }];
    }),
  );
}

// From 2 on an animal is called lame; 1 is an uneven gait that passes in a gather.
const isLameOn = ({ onset, sound, score }: LameSpell, date: Day): boolean =>
  onset <= date && date < sound && score >= 2;

function monthStarts(): readonly Day[] {
  const starts: Day[] = [];
  for (let day = year.first; day <= year.last; day = dayOf(`${isoText(day + 32).slice(0, 8)}01`)) starts.push(day);
  return starts;
}
