import type { Cell } from "../../cells/cell.ts";
import { type Day, isoText } from "../../cells/day.ts";
import { printedTag } from "../inventedFlock/asTyped.ts";
import type { CaseRecord } from "../inventedFlock/caseRecords.ts";
import { groups, year } from "../inventedFlock/flockYear.ts";
import { inventedFlock } from "../inventedFlock/inventedFlock.ts";
import { saleList } from "../inventedFlock/saleList.ts";
import type { BookContent, TypedRow } from "./bookContent.ts";
import { lesionWords } from "./bookTables.ts";

const people = ["shepherd", "farmer"] as const;

/** Invented, as everything about these medicines: strength, dose and days are made up. */
const medicines: readonly TypedRow[] = [
  ["medicine A", 200, 20, 35, "yes"],
  ["medicine B", 150, 9, 21, "yes"],
];

/** A book filled with the invented flock, as an office would have filled it, with a few slips of the hand. */
export function inventedBook(seed: number): BookContent {
  const flock = inventedFlock(seed);
  const { animals, gathers, cases } = flock;
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
    groups: groups.map(({ name }) => [name, there(name)]),
    medicines,
    givenBy: people,
    gathers: gathers.map(({ date, group, seen, lame }) => [date, group, seen, lame]),
    cases: withSlips(cases.map(typedCase), cases),
    saleDate: year.sale,
    saleTags: saleList(flock),
    eventDate: year.nextHousing,
  };
}

function typedCase(record: CaseRecord): Cell[] {
  const { animal, medicine, score, treated } = record;
  return [
    record.seen,
    treated ?? null,
    printedTag(animal.number),
    animal.group.name,
    record.foot,
    lesionWords[record.lesion],
    score,
    record.treatment || null,
    medicine ?? null,
    record.ml ?? null,
    record.withdrawalDays ?? null,
    treated === undefined ? null : (people[animal.number % 3 === 0 ? 1 : 0] ?? null),
    medicine === undefined || treated === undefined ? null : batch(medicine, treated),
    // The worst are looked at again sooner than usual.
    score >= 5 && treated !== undefined ? treated + 3 : null,
    record.lookedAgain ?? null,
    record.sound ?? null,
    animal.until < year.last ? animal.until : null,
    null,
  ];
}

// A bottle lasts about a quarter of a year.
const batch = (medicine: string, treated: Day): string =>
  `${medicine.slice(-1)}${isoText(treated).slice(2, 4)}-${Math.ceil(Number(isoText(treated).slice(5, 7)) / 3)}`;

/** One slip of each kind that the sheet Problems is there to find; the lists go on working. */
function withSlips(rows: readonly Cell[][], cases: readonly CaseRecord[]): readonly TypedRow[] {
  const treatedWith = cases.flatMap(({ medicine }, place) => (medicine === undefined ? [] : [place]));
  const slip = (place: number | undefined, column: number, change: (cell: Cell) => Cell): void => {
    const row = rows[place ?? -1];
    if (!row) throw new RangeError("the invented flock has too few cases for its slips");
    row[column] = change(row[column] ?? null);
  };
  slip(treatedWith.at(-6), 10, () => null);
  slip(Math.floor(cases.length / 3), 5, () => "sore");
  slip(treatedWith.at(40), 9, (ml) => String(ml));
  slip(Math.floor(cases.length / 2), 0, (day) => isoText(day as Day));
  return rows;
}
