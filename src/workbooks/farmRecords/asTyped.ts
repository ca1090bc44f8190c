import type { Cell } from "../../cells/cell.ts";
import { type Day, isoText } from "../../cells/day.ts";
import type { Lesion } from "../../core/words/lesionName.ts";
import { flockMark } from "../inventedFlock/animals.ts";
import type { CaseRecord } from "../inventedFlock/caseRecords.ts";
import type { Gather } from "../inventedFlock/gathers.ts";
import { fiveDigits, printedTag } from "../inventedFlock/printedTag.ts";
import type { SeededRandom } from "../inventedFlock/seededRandom.ts";
import type { WholeRecordOf } from "../tables/defineTable.ts";
import type { farmCases, TypedCase, TypedGather } from "./farmTables.ts";

/** How people write a lesion; the first is the usual one. */
const spellings: Record<Lesion, readonly string[]> = {
  "interdigital dermatitis": ["scald", "Scald", "ID", "foot scald", "scald "],
  footrot: ["footrot", "Footrot", "foot rot", "FR", " footrot"],
  "contagious ovine digital dermatitis": ["CODD", "codd", "Codd "],
  "white line abscess": ["white line abscess", "abscess", "White line abscess", "WLA"],
  "shelly hoof": ["shelly hoof", "Shelly"],
  "toe granuloma": ["toe granuloma", "granuloma"],
  "joint infection": ["joint ill"],
  "foreign body": ["thorn"],
  "overgrown hoof": ["overgrown"],
  "orf or strawberry footrot": ["orf"],
  other: ["other", "injury"],
  "no lesion found": ["none"],
};

const otherTags: readonly ((number: number) => Cell)[] = [
  (number) => Number(`9990${flockMark}${fiveDigits(number)}`),
  (number) => `zz0${flockMark}${fiveDigits(number)}`,
  (number) => `ZZ ${flockMark} ${fiveDigits(number)}`,
  (number) => `${printedTag(number)} `,
];

/**
 * The case records as they stand in the sheet, slips of the hand and all: rows left blank, spaces at the end, lesions
 * spelled this way and that, numbers and dates kept as text, tags written in several forms, two lesions that nobody
 * knows and one treatment with medicine whose withdrawal days were forgotten.
 */
export function typedCases(cases: readonly CaseRecord[], random: SeededRandom): readonly TypedCase[] {
  const withMedicine = cases.flatMap(({ medicine, animal }, index) =>
    medicine === undefined || animal.group.lambs ? [] : [index],
  );
  const forgotten = withMedicine.at(-6);
  const unknown = new Map([
    [Math.floor(cases.length / 3), "sore"],
    [Math.floor((cases.length * 2) / 3), "hot hoof?"],
  ]);
  return cases.flatMap((record, index): readonly TypedCase[] => {
    const typed = typedCase(record, random);
    const row = {
      ...typed,
      lesion: unknown.get(index) ?? typed.lesion,
      withdrawalDays: index === forgotten ? undefined : typed.withdrawalDays,
    };
    return index % 70 === 69 ? [row, {}] : [row];
  });
}

function typedCase(record: CaseRecord, random: SeededRandom): WholeRecordOf<typeof farmCases> {
  const { animal, foot, score, treatment, medicine, ml, mgPerMl, withdrawalDays, weightKg } = record;
  const sometimes = (chance: number, other: Cell, usual: Cell): Cell => (random.happens(chance) ? other : usual);
  const date = (day: Day | undefined): Cell => (day === undefined ? null : sometimes(0.02, isoText(day), day));
  const number = (value: number | undefined): Cell =>
    value === undefined ? null : sometimes(0.03, String(value), value);
  return {
    seen: date(record.seen),
    treated: date(record.treated),
    tag: sometimes(0.1, random.pick(otherTags)(animal.number), printedTag(animal.number)),
    group: sometimes(0.03, `${animal.group.name} `, animal.group.name),
    foot: sometimes(0.04, foot.toLowerCase(), foot),
    lesion: sometimes(0.35, random.pick(spellings[record.lesion]), spellings[record.lesion][0] ?? null),
    score: sometimes(0.05, null, number(score)),
    treatment: treatment === "" ? null : treatment,
    medicine: medicine === undefined ? null : sometimes(0.06, `${medicine} `, medicine),
    ml: number(ml),
    mgPerMl: number(mgPerMl),
    withdrawalDays: number(withdrawalDays),
    lookedAgain: date(record.lookedAgain),
    soundOn: date(record.sound),
    kg: sometimes(0.08, null, number(weightKg)),
  };
}

/** The gathers as they stand in the sheet: a row left blank between some months, a space here, a number as text there. */
export const typedGathers = (gathers: readonly Gather[], random: SeededRandom): readonly TypedGather[] =>
  gathers.flatMap(({ date, group, lame, seen }, index): readonly TypedGather[] => {
    const row: TypedGather = {
      date,
      group: random.happens(0.05) ? `${group} ` : group,
      lame: random.happens(0.05) ? String(lame) : lame,
      seen: random.happens(0.05) ? ` ${seen}` : seen,
    };
    const newQuarter = index > 0 && gathers[index - 1]?.group !== group && group === "Old ewes" && index % 3 === 0;
    return newQuarter ? [{}, row] : [row];
  });
