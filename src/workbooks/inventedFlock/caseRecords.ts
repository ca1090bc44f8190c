import type { Day } from "../../cells/day.ts";
import type { Lesion } from "../../core/words/lesionName.ts";
import { type Animal, weightOn } from "./animals.ts";
import { year } from "./flockYear.ts";
import type { Foot, LameSpell } from "./lameSpells.ts";
import type { SeededRandom } from "./seededRandom.ts";

/** One lame animal as it was written down, before the slips of the hand. */
export interface CaseRecord {
  readonly seen: Day;
  readonly treated: Day | undefined;
  readonly animal: Animal;
  readonly foot: Foot;
  readonly lesion: Lesion;
  readonly score: number;
  readonly treatment: string;
  readonly medicine: string | undefined;
  readonly ml: number | undefined;
  readonly mgPerMl: number | undefined;
  readonly withdrawalDays: number | undefined;
  readonly lookedAgain: Day | undefined;
  readonly sound: Day | undefined;
  readonly weightKg: number;
}

/** An invented medicine: strength, dose and days are made up. */
interface Medicine {
  readonly name: string;
  readonly mgPerMl: number;
  readonly mlPerKg: number;
  readonly withdrawalDays: number;
}

const medicineA: Medicine = { name: "medicine A", mgPerMl: 200, mlPerKg: 0.1, withdrawalDays: 35 };
const medicineB: Medicine = { name: "medicine B", mgPerMl: 150, mlPerKg: 0.06, withdrawalDays: 21 };

interface Course {
  readonly treatment: string;
  readonly medicine?: Medicine;
}

const spray: Course = { treatment: "spray" };

const courses: Record<Lesion, Course> = {
  "interdigital dermatitis": spray,
  footrot: { treatment: "injection and spray", medicine: medicineA },
  "contagious ovine digital dermatitis": { treatment: "injection", medicine: medicineB },
  "white line abscess": { treatment: "pus let out" },
  "shelly hoof": { treatment: "pocket cleared" },
  "toe granuloma": { treatment: "vet asked" },
  "joint infection": { treatment: "injection", medicine: medicineB },
  "foreign body": { treatment: "taken out" },
  "overgrown hoof": { treatment: "none" },
  "orf or strawberry footrot": { treatment: "vet asked" },
  other: spray,
  "no lesion found": { treatment: "none" },
};

/** The spells that were written down by the end of the year, in order of the day they were seen. */
export const caseRecords = (spells: readonly LameSpell[], random: SeededRandom): readonly CaseRecord[] =>
  spells
    .flatMap((spell) =>
      spell.seen === undefined || spell.seen < year.first || spell.seen > year.last
        ? []
        : treatedAgain(caseRecord(spell, spell.seen, random)),
    )
    .sort((one, other) => one.seen - other.seen || one.animal.number - other.animal.number);

function caseRecord(spell: LameSpell, seen: Day, random: SeededRandom): CaseRecord {
  const { treatment, medicine } = courses[spell.lesion];
  const written = writtenOf(spell.animal);
  const treated = written(spell.treated);
  const weightKg = weightOn(spell.animal, seen);
  const common = { seen, animal: spell.animal, foot: spell.foot, lesion: spell.lesion, score: spell.score, weightKg };
  const lookedAgain = treated === undefined ? undefined : treated + 7 + random.pick([0, 0, 0, 0, 1, 1, 2, 3]);
  // Looks that are more than three weeks old were nearly all made; it is the fresh ones that slip.
  const forgotten = random.happens(year.last - seen > 28 ? 0.012 : 0.3);
  const treatmentWritten =
    treated === undefined
      ? { treatment: "", medicine: undefined, ml: undefined, mgPerMl: undefined, withdrawalDays: undefined }
      : {
          treatment,
          medicine: medicine?.name,
          ml: medicine && Math.round(weightKg * medicine.mlPerKg * 10) / 10,
          mgPerMl: medicine?.mgPerMl,
          // No withdrawal is an answer too, and it is written down as 0: a blank would be a missing record.
          withdrawalDays: medicine?.withdrawalDays ?? 0,
        };
  return {
    ...common,
    treated,
    ...treatmentWritten,
    lookedAgain: forgotten ? undefined : written(lookedAgain),
    sound: treated === undefined ? undefined : written(spell.sound),
  };
}

/** Two thirds of those that the second look finds lame after a medicine are given it once more; the others heal without. */
function treatedAgain(record: CaseRecord): readonly CaseRecord[] {
  const { animal, lookedAgain, sound, medicine } = record;
  const stillLame = lookedAgain !== undefined && (sound === undefined || sound > lookedAgain);
  if (medicine === undefined || !stillLame || animal.number % 3 === 1) return [record];
  const again = lookedAgain + 7;
  return [
    record,
    { ...record, seen: lookedAgain, treated: lookedAgain, lookedAgain: again <= animal.until ? again : undefined },
  ];
}

/** What had come by the end of the year, or by the day the animal left. */
const writtenOf =
  ({ until }: Animal) =>
  (day: Day | undefined): Day | undefined =>
    day !== undefined && day <= until ? day : undefined;
