import { type Day, isoText } from "../../cells/day.ts";
import type { CaseRecord } from "../inventedFlock/caseRecords.ts";
import { groups, year } from "../inventedFlock/flockYear.ts";
import { inventedFlock } from "../inventedFlock/inventedFlock.ts";
import { printedTag } from "../inventedFlock/printedTag.ts";
import { saleList } from "../inventedFlock/saleList.ts";
import type { cases } from "../tables/cases.ts";
import type { WholeRecordOf } from "../tables/defineTable.ts";
import { lesionWords } from "../tables/recordWords.ts";
import type { BookContent } from "./bookContent.ts";

const people = ["shepherd", "farmer"] as const;

/** Invented, as everything about these medicines: strength, dose and days are made up. */
const medicines: BookContent["medicines"] = [
  { medicine: "medicine A", mgPerMl: 200, mgPerKg: 20, withdrawalDays: 35, antibiotic: "yes" },
  { medicine: "medicine B", mgPerMl: 150, mgPerKg: 9, withdrawalDays: 21, antibiotic: "yes" },
];

/** A book filled with the invented flock, as an office would have filled it, with a few slips of the hand. */
export function inventedBook(seed: number): BookContent {
  const flock = inventedFlock(seed);
  const { animals, gathers, cases: records } = flock;
  const there = (name: string): number =>
    animals.filter(({ group, until }) => group.name === name && until === year.last).length;
  const lambs = animals.filter(({ group }) => group.lambs);
  return {
    farm: "Invented flock",
    made: isoText(year.last),
    invented: true,
    asOf: year.last,
    target: 0.05,
    lameFrom: 2,
    breedingSheep: animals.length - lambs.length,
    slaughterLambs: lambs.filter(({ until }) => until < year.last).length,
    groups: groups.map(({ name }) => ({ group: name, sheepNow: there(name) })),
    medicines,
    givenBy: people,
    gathers: gathers.map(({ date, group, seen, lame }) => ({ date, group, lookedAt: seen, lame })),
    cases: withSlips(records.map(typedCase), records),
    saleDate: year.sale,
    saleTags: saleList(flock),
    eventDate: year.nextHousing,
  };
}

type Typed = WholeRecordOf<typeof cases>;

function typedCase(record: CaseRecord): Typed {
  const { animal, medicine, score, treated } = record;
  return {
    seen: record.seen,
    treated,
    tag: printedTag(animal.number),
    group: animal.group.name,
    animals: undefined,
    foot: record.foot,
    lesion: lesionWords[record.lesion],
    score,
    treatment: record.treatment || undefined,
    medicine,
    ml: record.ml,
    withdrawalDays: record.withdrawalDays,
    givenBy: treated === undefined ? undefined : people[animal.number % 3 === 0 ? 1 : 0],
    batch: medicine === undefined || treated === undefined ? undefined : batch(medicine, treated),
    // The worst are looked at again sooner than usual.
    recheckDue: score >= 5 && treated !== undefined ? treated + 3 : undefined,
    lookedAgain: record.lookedAgain,
    soundOn: record.sound,
    leftFlock: animal.until < year.last ? animal.until : undefined,
    note: undefined,
  };
}

// A bottle lasts about a quarter of a year.
const batch = (medicine: string, treated: Day): string =>
  `${medicine.slice(-1)}${isoText(treated).slice(2, 4)}-${Math.ceil(Number(isoText(treated).slice(5, 7)) / 3)}`;

/** One slip of each kind that the sheet Problems is there to find; the lists go on working. */
function withSlips(rows: readonly Typed[], records: readonly CaseRecord[]): readonly Typed[] {
  const treatedWith = records.flatMap(({ medicine }, index) => (medicine === undefined ? [] : [index]));
  const slips = new Map<number | undefined, (row: Typed) => Partial<Typed>>([
    [treatedWith.at(-6), () => ({ withdrawalDays: undefined })],
    [Math.floor(records.length / 3), () => ({ lesion: "sore" })],
    [treatedWith.at(40), ({ ml }) => ({ ml: String(ml) })],
    [Math.floor(records.length / 2), ({ seen }) => ({ seen: isoText(seen as Day) })],
  ]);
  return rows.map((row, index) => ({ ...row, ...slips.get(index)?.(row) }));
}
