import type { Day } from "../../cells/day.ts";
import { Doubt } from "../../cells/doubt.ts";
import { noTag } from "../words/faults.ts";
import { lesionWritten } from "../words/lesionWritten.ts";
import type { Tag } from "../words/tagKey.ts";
import { enoughTogether, type TooFew } from "./enoughTogether.ts";
import { anyAnimal, type DoubtedRecord, doubtInWords } from "./readableRecords.ts";

/** Treatments and what came of them, a row a treatment; all columns have the same length. */
export interface TreatmentRecords {
  readonly tags: readonly (Tag | undefined | Doubt)[];
  /** Undefined in a row that holds no treatment. */
  readonly treated: readonly (Day | undefined | Doubt)[];
  readonly lesions: readonly (string | undefined | Doubt)[];
  readonly medicines: readonly (string | undefined | Doubt)[];
  readonly soundOn: readonly (Day | undefined | Doubt)[];
  readonly leftOn: readonly (Day | undefined | Doubt)[];
}

export interface NotSound {
  readonly tag: string;
  /** Days on which it was treated and after which it was not found sound; "not known" where a row cannot be read. */
  readonly treatments: number | "not known";
  readonly first: Day | undefined;
  readonly last: Day | undefined;
  /** In the order in which they were written down; what cannot be read, where the treatments are not known. */
  readonly lesion: string;
  readonly medicine: string;
}

export interface NotSoundRule {
  /** How many days of treatment put an animal on the list, 1 or more. */
  readonly atLeast: number;
  /** Treatments on or after this day count. */
  readonly from?: Day | undefined;
}

/**
 * The animals treated on several days and not sound, nor gone, since: those with one lesion and medicine together, the
 * most frequent of these first, and within them the most treatments first.
 *
 * A day on which an animal was found sound, or left, settles its treatments up to that day, in whichever row it stands.
 * Two medicines on one day are one treatment.
 *
 * @param rowOf - the row of the sheet for a place in the columns
 * @see common practice, no source
 * @example
 * notSound(46090, { tags: [a, a], treated: [46063, 46070], lesions: ["scald", "scald"], medicines: ["X", "Y"],
 *   soundOn: [undefined, undefined], leftOn: [undefined, undefined] }, { atLeast: 2 }, (index) => index + 1)
 * // → [{ tag: "041", treatments: 2, first: 46063, last: 46070, lesion: "interdigital dermatitis", medicine: "X, then Y" }]
 */
export function notSound(
  asOf: Day,
  records: TreatmentRecords,
  { atLeast, from }: NotSoundRule,
  rowOf: (index: number) => number,
): readonly NotSound[] {
  const { tags, treated, lesions, medicines } = records;
  const settledIn = (index: number): Day => lastOf(asOf, records.soundOn[index], records.leftOn[index]);
  const animals = new Map<string, Animal>();
  const untagged: DoubtedRecord[] = [];
  for (let index = 0; index < tags.length; index++) {
    const [tag, day] = [tags[index], treated[index]];
    const settled = settledIn(index);
    const known = tag instanceof Doubt ? undefined : tag;
    const animal = known && (animals.get(known.key) ?? begun(animals, known));
    if (animal && settled > animal.settled) animal.settled = settled;
    if (day === undefined) continue;
    if (day instanceof Doubt ? settled > never : day > asOf || day < (from ?? day) || settled >= day) continue;
    const doubt = [tag ?? new Doubt("tags", noTag), day, records.soundOn[index], records.leftOn[index]].find(
      (part) => part instanceof Doubt,
    );
    const date = day instanceof Doubt ? undefined : day;
    if (doubt instanceof Doubt) (animal?.doubted ?? untagged).push({ index, tag: known, date, doubt });
    if (animal && date !== undefined) animal.open.push({ index, day: date });
  }
  const lines: NotSound[] = [];
  const tooFew: TooFew[] = [];
  const doubted: NotSound[] = untagged.length === 0 ? [] : [inDoubt(anyAnimal, untagged, rowOf)];
  for (const { tag, open, doubted: inRows, settled } of animals.values()) {
    const still = open.filter(({ day }) => day > settled).sort((one, other) => one.day - other.day);
    const doubts = inRows.filter(({ date }) => date === undefined || date > settled);
    const days = new Set(still.map(({ day }) => day));
    const undated = doubts.filter(({ date }) => date === undefined).length;
    const count = days.size + undated;
    if (count < atLeast) {
      if (count > 0) tooFew.push({ tag, count });
    } else if (doubts.length > 0) doubted.push(inDoubt(tag.shown, doubts, rowOf));
    else
      lines.push({
        tag: tag.shown,
        treatments: days.size,
        first: still[0]?.day,
        last: still.at(-1)?.day,
        lesion: inOrder(still, (index) => inWords(lesions[index], lesionWritten), "no lesion recorded"),
        medicine: inOrder(still, (index) => inWords(medicines[index], asWritten), "no medicine recorded"),
      });
  }
  for (const { tag, why } of enoughTogether(tooFew, atLeast, "treatments")) doubted.push(notKnown(tag, why));
  return [...doubted, ...together(lines)];
}

interface Treatment {
  readonly index: number;
  readonly day: Day;
}

interface Animal {
  readonly tag: Tag;
  /** The last day on which it was found sound, or left. */
  settled: Day;
  readonly open: Treatment[];
  readonly doubted: DoubtedRecord[];
}

const never = Number.NEGATIVE_INFINITY;

function begun(animals: Map<string, Animal>, tag: Tag): Animal {
  const animal: Animal = { tag, settled: never, open: [], doubted: [] };
  animals.set(tag.key, animal);
  return animal;
}

/** The last of the days that had come; a day that cannot be read, or is yet to come, settles nothing. */
const lastOf = (asOf: Day, ...days: readonly (Day | undefined | Doubt)[]): Day =>
  Math.max(never, ...days.filter((day): day is Day => typeof day === "number" && day <= asOf));

const notKnown = (tag: string, why: string): NotSound => ({
  tag,
  treatments: "not known",
  first: undefined,
  last: undefined,
  lesion: why,
  medicine: "",
});

const inDoubt = (tag: string, rows: readonly DoubtedRecord[], rowOf: (index: number) => number): NotSound =>
  notKnown(tag, doubtInWords(rows, rowOf));

const asWritten = (text: string): string => text;

const inWords = (written: string | undefined | Doubt, read: (text: string) => string): string | undefined =>
  written instanceof Doubt ? "cannot be read" : written === undefined ? undefined : read(written);

/** What was written down day by day: two of one day joined by a plus, and what is the same as before left out. */
function inOrder(
  treatments: readonly Treatment[],
  wordOf: (index: number) => string | undefined,
  nothing: string,
): string {
  const byDay = new Map<Day, Set<string>>();
  for (const { index, day } of treatments) {
    const words = byDay.get(day) ?? new Set<string>();
    const word = wordOf(index);
    if (word !== undefined) words.add(word);
    byDay.set(day, words);
  }
  const days = [...byDay.values()].map((words) => [...words].join(" + ") || nothing);
  return days.filter((words, index) => words !== days[index - 1]).join(", then ");
}

/** Lines with one lesion and medicine together, the most frequent of these first. */
function together(lines: readonly NotSound[]): readonly NotSound[] {
  const groups = new Map<string, NotSound[]>();
  for (const line of lines) {
    const name = `${line.lesion}|${line.medicine}`;
    const group = groups.get(name);
    if (group === undefined) groups.set(name, [line]);
    else group.push(line);
  }
  return [...groups.values()]
    .sort((one, other) => other.length - one.length)
    .flatMap((group) =>
      group.sort(
        (one, other) =>
          Number(other.treatments) - Number(one.treatments) || Number(other.last ?? 0) - Number(one.last ?? 0),
      ),
    );
}
