import { dayOf, isoText } from "../../cells/day.ts";
import { cases } from "../../core/animals/cases.ts";
import { type CaseRow, careByYear } from "../collate/careByYear.ts";
import { collateBooks } from "../collate/collateBooks.ts";
import type { FlockRecord, YearRecord } from "../collate/flockRecord.ts";
import { year } from "../inventedFlock/flockYear.ts";
import { type SeededRandom, seededRandom } from "../inventedFlock/seededRandom.ts";
import type { ComparisonContent } from "./comparisonContent.ts";

const compared = 2026;
const gapDays = 14;

const names = (
  "Alder Ash Aspen Beech Birch Blackthorn Bramble Broom Cedar Cherry Dogwood Elder Elm Fern Fir Gorse " +
  "Hawthorn Hazel Heather Holly Hornbeam Ivy Juniper Larch Lime Maple Oak Pine Rowan Willow"
).split(" ");

function inventedFlocks(random: SeededRandom) {
  const lameOf = (sheep: number, share: number): number =>
    Array.from({ length: sheep }, () => random.happens(share)).filter(Boolean).length;
  return names.map((name, index) => {
    const breedingSheep = random.whole(60, 700);
    const lookedAt = breedingSheep * random.whole(1, 4);
    const usual = 0.02 + 0.07 * random.share() ** 2;
    // One is out of line even among flocks that differ.
    const share = usual + (index === 15 ? 0.18 : index % 11 === 4 ? 0.08 : 0);
    const before = Math.min(0.25, share * (0.8 + 0.9 * random.share()));
    const lame = lameOf(lookedAt, share);
    const lookedBefore = index % 9 === 7 ? undefined : Math.round(lookedAt * (0.7 + 0.5 * random.share()));
    return {
      name,
      lookedAt,
      lame,
      before: lookedBefore === undefined ? undefined : { lookedAt: lookedBefore, lame: lameOf(lookedBefore, before) },
      cases: Math.round(breedingSheep * share * 2.5),
      antibioticMg: index % 7 === 3 ? undefined : Math.round(breedingSheep * share * 2 * 1500),
      breedingSheep,
      slaughterLambs: Math.round(breedingSheep * (1.2 + 0.4 * random.share())),
      target: index % 5 === 2 ? 0.03 : undefined,
    };
  });
}

/** What is known of a flock before its cases are invented. */
type InventedFlock = ReturnType<typeof inventedFlocks>[number];

const lesions: Readonly<Record<string, number>> = {
  footrot: 44,
  "interdigital dermatitis": 34,
  "contagious ovine digital dermatitis": 8,
  "white line abscess": 7,
  "shelly hoof": 5,
  "footrot?": 2,
};

/** Cases of one flock, whose shepherd treats soon or late, and whose book may have its gaps. */
function inventedCases({ cases, breedingSheep }: InventedFlock, index: number, random: SeededRandom): CaseRow[] {
  const soon = 0.35 + 0.6 * random.share();
  const daysLame = 4 + 9 * random.share();
  const hasCodd = random.happens(0.4);
  const first = dayOf(`${compared}-01-01`);
  return Array.from({ length: cases }, (): CaseRow => {
    const number = random.whole(1, breedingSheep);
    const seen = random.whole(first, year.last);
    const by = (day: number): number | undefined => (day <= year.last ? day : undefined);
    const treated = by(seen + (random.happens(soon) ? random.whole(0, 3) : random.whole(4, 12)));
    const sound =
      treated === undefined ? undefined : by(treated + 1 + Math.round(daysLame * 2 * random.share() ** 1.4));
    const drawn = random.weighted(lesions);
    const lesion = drawn.startsWith("contagious") && !hasCodd ? "footrot" : drawn;
    const tag = `ZZ ${index + 1} ${number}`;
    return {
      tag: { key: tag, shown: tag },
      day: seen,
      seen,
      // One book has no days of treatment, and all forget some.
      treated: index === 12 ? undefined : random.happens(0.03) ? "unread" : treated,
      soundOn: index === 5 || random.happens(0.12) ? undefined : sound,
      leftOn: undefined,
      lesion: index === 20 || random.happens(0.08) ? undefined : lesion,
    };
  });
}

type Counts = Pick<YearRecord, "lookedAt" | "lame">;

/** Counts spread over the first days of months in which the lame are more or fewer; one flock is gathered once. */
function onDays(ofYear: number, months: number, { lookedAt, lame }: Counts, random: SeededRandom) {
  const days = Array.from({ length: months }, (_, month) => ({
    weight: 0.6 + random.share(),
    lookedAt: Math.floor((lookedAt * (month + 1)) / months) - Math.floor((lookedAt * month) / months),
    lame: 0,
  }));
  for (let left = lame; left > 0; left--) {
    const open = days.flatMap((day, month) => (day.lame < day.lookedAt ? [[month, day.weight] as const] : []));
    const month = Number(random.weighted(Object.fromEntries(open)));
    (days[month] as { lame: number }).lame++;
  }
  return new Map(
    days.map(({ weight, ...counts }, month) => [dayOf(`${ofYear}-${String(month + 1).padStart(2, "0")}-01`), counts]),
  );
}

function recordOf(flock: InventedFlock, index: number, random: SeededRandom): FlockRecord {
  const { name, before, antibioticMg } = flock;
  const rows = inventedCases(flock, index, random);
  const asOf = index === 17 ? undefined : year.last;
  const begun = cases(
    rows.map(({ tag }) => tag),
    rows.map(({ day }) => day),
    gapDays,
  );
  const years = new Map<number, YearRecord>();
  const [noCases, noMg] = [{ cases: 0 }, { antibioticMg: 0, coursesWithoutMg: 0 }];
  if (before) {
    const days = onDays(compared - 1, 12, before, random);
    years.set(compared - 1, { gathers: days.size, days, ...before, ...noCases, ...noMg });
  }
  const days = onDays(compared, index === 18 ? 1 : 10, flock, random);
  years.set(compared, {
    gathers: days.size,
    days,
    lookedAt: flock.lookedAt,
    lame: flock.lame,
    cases: Array.from(begun).length,
    antibioticMg,
    coursesWithoutMg: antibioticMg === undefined ? 1 + (index % 4) : 0,
  });
  const lost = index === 8 ? ["Gathers row 14: a blank is not a date"] : [];
  return {
    flock: name,
    target: flock.target,
    breedingSheep: index === 24 ? undefined : flock.breedingSheep,
    slaughterLambs: flock.slaughterLambs,
    years,
    asOf,
    care: careByYear(rows, gapDays, asOf),
    inNoCase: index === 14 ? 2 : 0,
    coursesWithoutDay: 0,
    records: rows.length + days.size,
    toMend: lost.length + (index === 14 ? 2 : 0),
    leftOut: lost,
    latest: year.last,
  };
}

/**
 * Thirty flocks named after plants, all invented: most alike, a few worse than chance makes them and one out of line,
 * some with gaps in their books. They are put side by side as books are.
 */
export function inventedComparison(seed: number): ComparisonContent {
  const flocks = inventedFlocks(seededRandom(seed));
  const random = seededRandom(seed + 1);
  const read = flocks.map((flock, index) => ({
    file: `${flock.name.toLowerCase()}.xlsx`,
    read: recordOf(flock, index, random),
  }));
  const unused = { file: "gathers to type in.docx", read: { reason: "It is no .xlsx workbook." } };
  const collated = collateBooks([...read, unused], {
    year: compared,
    letters: false,
    made: isoText(year.last),
    target: 0.05,
  });
  if (!collated) throw new Error("the invented flocks cannot be compared");
  return { ...collated.content, invented: true, chosen: names[10] };
}
