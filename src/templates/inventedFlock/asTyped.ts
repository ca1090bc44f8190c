import type { Cell } from "../../cells/cell.ts";
import { type Day, isoText } from "../../cells/day.ts";
import type { Lesion } from "../../core/lesions/lesionName.ts";
import { flockMark } from "./animals.ts";
import type { CaseRecord } from "./caseRecords.ts";
import type { Gather } from "./gathers.ts";
import type { SeededRandom } from "./seededRandom.ts";

/** A row of a sheet as a person typed it; empty for a row left blank. */
export type TypedRow = readonly Cell[];

export const caseHeadings = [
  "Seen lame",
  "Treated",
  "Tag",
  "Group",
  "Foot",
  "Lesion",
  "Score",
  "Treatment",
  "Medicine",
  "Dose ml",
  "Strength mg/ml",
  "Withdrawal days",
  "Looked again",
  "Sound on",
  "Weight kg",
] as const;

export const gatherHeadings = ["Date", "Group", "Lame", "Seen"] as const;

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

/**
 * A tag as it is printed, read or typed. Every spelling means the same animal to TAGKEY.
 *
 * @example
 * printedTag(42) // → "ZZ 0123456 00042"
 */
export const printedTag = (number: number): string => `ZZ 0${flockMark} ${fiveDigits(number)}`;

const fiveDigits = (number: number): string => String(number).padStart(5, "0");

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
export function typedCases(cases: readonly CaseRecord[], random: SeededRandom): readonly TypedRow[] {
  const withMedicine = cases.flatMap(({ medicine, animal }, place) =>
    medicine === undefined || animal.group.lambs ? [] : [place],
  );
  const forgotten = withMedicine.at(-6);
  const unknown = new Map([
    [Math.floor(cases.length / 3), "sore"],
    [Math.floor((cases.length * 2) / 3), "hot hoof?"],
  ]);
  return cases.flatMap((record, place): readonly TypedRow[] => {
    const row = typedCase(record, random);
    row[5] = unknown.get(place) ?? row[5] ?? null;
    if (place === forgotten) row[11] = null;
    return place % 70 === 69 ? [row, []] : [row];
  });
}

function typedCase(record: CaseRecord, random: SeededRandom): Cell[] {
  const { animal, foot, score, treatment, medicine, ml, mgPerMl, withdrawalDays, weightKg } = record;
  const sometimes = (chance: number, other: Cell, usual: Cell): Cell => (random.happens(chance) ? other : usual);
  const date = (day: Day | undefined): Cell => (day === undefined ? null : sometimes(0.02, isoText(day), day));
  const number = (value: number | undefined): Cell =>
    value === undefined ? null : sometimes(0.03, String(value), value);
  return [
    date(record.seen),
    date(record.treated),
    sometimes(0.1, random.pick(otherTags)(animal.number), printedTag(animal.number)),
    sometimes(0.03, `${animal.group.name} `, animal.group.name),
    sometimes(0.04, foot.toLowerCase(), foot),
    sometimes(0.35, random.pick(spellings[record.lesion]), spellings[record.lesion][0] ?? null),
    sometimes(0.05, null, number(score)),
    treatment === "" ? null : treatment,
    medicine === undefined ? null : sometimes(0.06, `${medicine} `, medicine),
    number(ml),
    number(mgPerMl),
    number(withdrawalDays),
    date(record.lookedAgain),
    date(record.sound),
    sometimes(0.08, null, number(weightKg)),
  ];
}

/** The gathers as they stand in the sheet: a row left blank between some months, a space here, a number as text there. */
export const typedGathers = (gathers: readonly Gather[], random: SeededRandom): readonly TypedRow[] =>
  gathers.flatMap(({ date, group, lame, seen }, place): readonly TypedRow[] => {
    const row: TypedRow = [
      date,
      random.happens(0.05) ? `${group} ` : group,
      random.happens(0.05) ? String(lame) : lame,
      random.happens(0.05) ? ` ${seen}` : seen,
    ];
    const newQuarter = place > 0 && gathers[place - 1]?.group !== group && group === "Old ewes" && place % 3 === 0;
    return newQuarter ? [[], row] : [row];
  });
