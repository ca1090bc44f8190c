import type { Day } from "../../cells/day.ts";
import { isoText } from "../../cells/day.ts";
import type { Lesion } from "../../core/words/lesionName.ts";
import type { Animal } from "./animals.ts";
import { year } from "./flockYear.ts";
import type { SeededRandom } from "./seededRandom.ts";

const feet = ["LF", "RF", "LH", "RH"] as const;
export type Foot = (typeof feet)[number];

/** One animal lame on one foot, whether anybody wrote it down or not. */
export interface LameSpell {
  readonly animal: Animal;
  readonly foot: Foot;
  readonly lesion: Lesion;
  readonly onset: Day;
  /** The first day she walks sound again; may lie after the year. */
  readonly sound: Day;
  /** What was written down, if she was caught. */
  readonly seen: Day | undefined;
  readonly treated: Day | undefined;
  /** Locomotion, 0 sound to 6 cannot stand. */
  readonly score: number;
}

type Risks = Partial<Record<Lesion, number>>;

/** New cases among 1000 animals in a day, January to December: housing and warm wet months are the worst. */
const footrotByMonth = [1.4, 2.2, 2.0, 0.9, 0.6, 0.6, 0.45, 0.45, 0.9, 1.1, 0.9, 0.8];
const scaldByMonth = [0.6, 0.9, 1.0, 0.9, 1.2, 1.3, 0.7, 0.4, 0.6, 0.7, 0.5, 0.4];
const steady: Risks = { "white line abscess": 0.17, "shelly hoof": 0.09, "toe granuloma": 0.03, other: 0.05 };

// Asked for every animal on every day, so each day's calendar month is worked out once.
const months = new Map<Day, number>();

function monthOf(day: Day): number {
  const known = months.get(day);
  if (known !== undefined) return known;
  const month = Number(isoText(day).slice(5, 7)) - 1;
  months.set(day, month);
  return month;
}

function risksOn(day: Day, { group, from }: Animal): Risks {
  const month = monthOf(day);
  const footrot = footrotByMonth[month] ?? 0;
  const scald = scaldByMonth[month] ?? 0;
  if (group.lambs)
    return {
      "interdigital dermatitis": scald * 3,
      footrot: footrot * 0.5,
      "joint infection": day - from < 40 ? 0.2 : 0,
      other: 0.05,
    };
  return { ...steady, footrot, "interdigital dermatitis": scald * 0.7, ...coddRisk(day, group.name) };
}

// It came with the bought-in sheep, broke out among them, and later reached the groups they were run with.
function coddRisk(day: Day, group: string): Risks {
  const since = day - year.boughtIn;
  if (group === "Bought-in shearlings" && since > 4) return { "contagious ovine digital dermatitis": 6 };
  if (since > 35) return { "contagious ovine digital dermatitis": group === "Shearlings" ? 1.3 : 0.35 };
  return {};
}

/** Days from treatment to sound, fewest and most. */
const recovery: Record<Lesion, readonly [number, number]> = {
  "interdigital dermatitis": [2, 7],
  footrot: [3, 13],
  "contagious ovine digital dermatitis": [9, 38],
  "white line abscess": [2, 9],
  "shelly hoof": [2, 10],
  "toe granuloma": [14, 60],
  "joint infection": [10, 40],
  "foreign body": [1, 4],
  "overgrown hoof": [2, 10],
  "orf or strawberry footrot": [10, 30],
  other: [3, 14],
  "no lesion found": [1, 4],
};

const scores: Record<"mild" | "severe", Record<string, number>> = {
  mild: { "1": 10, "2": 50, "3": 30, "4": 10 },
  severe: { "2": 25, "3": 35, "4": 25, "5": 12, "6": 3 },
};
const mild: readonly Lesion[] = ["interdigital dermatitis", "shelly hoof", "other"];

/** Every lame spell of the year, in order of animal and then of day. */
export const lameSpells = (animals: readonly Animal[], random: SeededRandom): readonly LameSpell[] =>
  animals.flatMap((animal) => spellsOf(animal, random));

function spellsOf(animal: Animal, random: SeededRandom): readonly LameSpell[] {
  const spells: LameSpell[] = [];
  for (let day = animal.from; day <= animal.until; day++) {
    const before = spells.at(-1);
    // She cannot go lame while she is lame, and a foot that has been bad goes bad again more easily.
    if (before && day < before.sound + 3) continue;
    const again = before && day - before.sound < 120 ? 2 : 1;
    const risks = risksOn(day, animal);
    const total = Object.values(risks).reduce((sum, risk) => sum + risk, 0);
    if (!random.happens((total / 1000) * animal.readiness * again)) continue;
    const foot = before && random.happens(0.45) ? before.foot : random.pick(feet);
    spells.push(spell(animal, foot, random.weighted<Lesion>(risks), day, random));
  }
  return spells;
}

function spell(animal: Animal, foot: Foot, lesion: Lesion, onset: Day, random: SeededRandom): LameSpell {
  const severity = mild.includes(lesion) ? "mild" : "severe";
  const score = Number(random.weighted(scores[severity]));
  const [fewest, most] = recovery[lesion];
  const common = { animal, foot, lesion, onset, score };
  if (!random.happens(animal.group.recorded))
    return { ...common, seen: undefined, treated: undefined, sound: onset + random.whole(fewest + 6, most * 2 + 14) };
  const seen = onset + random.whole(0, 5);
  const sound = random.whole(fewest, most);
  // A few are written down and then not found again to be treated.
  if (random.happens(0.03)) return { ...common, seen, treated: undefined, sound: seen + 2 * sound + 7 };
  const treated = seen + daysWaited(random);
  return { ...common, seen, treated, sound: treated + sound };
}

function daysWaited(random: SeededRandom): number {
  if (random.happens(0.5)) return 0;
  return random.happens(0.75) ? random.whole(1, 3) : random.whole(4, 10);
}
