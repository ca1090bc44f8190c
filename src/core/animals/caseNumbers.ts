import type { Day } from "../../cells/day.ts";
import { showDay } from "../../cells/day.ts";
import { Doubt } from "../../cells/doubt.ts";
import type { Tag } from "../words/tagKey.ts";
import { type Case, cases } from "./cases.ts";
import { type DoubtedRecords, doubtedByAnimal, doubtInWords, readableRecords } from "./readableRecords.ts";
import { notMet } from "./rowsByAnimal.ts";

/** Why the case of a day cannot be said. */
export interface NoCase {
  readonly none: string;
  /**
   * What was asked in vain: an animal without any record, or a day that lies in none of its cases. Undefined where a record
   * that cannot be read keeps it from being known.
   */
  readonly asked: "tag" | "date" | undefined;
}

/** Questions in columns of the same length: a day, and the animal it is about. */
interface Asked {
  readonly tags: readonly (Tag | Doubt)[];
  readonly days: readonly (Day | Doubt)[];
}

/**
 * Which case of the animal each asked day falls in, from its first record to its last.
 *
 * A record of the animal of which the day cannot be read may lie in any case, so that none of its numbers is known. One
 * without a readable tag may be of any animal: it can change the numbers from its own day on.
 *
 * @param rowOf - the row of the sheet for a place in the records
 * @returns the number of the case, 1 for the first, or why it cannot be said: the animal has no record, the day lies in
 *   none of its cases, or something cannot be read
 * @example
 * caseNumbers({ tags: [a], days: [46065] }, { tags: [a, a], dates: [46063, 46070] }, 14, (index) => index + 1) // → [1]
 */
export function caseNumbers(
  asked: Asked,
  records: DoubtedRecords,
  gapDays: number,
  rowOf: (index: number) => number,
): readonly (number | NoCase)[] {
  const { tags, dates, doubted } = readableRecords(records);
  const ofAnimal = doubtedByAnimal(doubted);
  const untagged = doubted.filter(({ tag }) => tag === undefined);
  const untaggedFrom = untagged.reduce((from, { date }) => Math.min(from, date ?? 0), Number.POSITIVE_INFINITY);
  // Only these: often it is one animal among thousands.
  const animals = new Map<string, number>();
  for (const tag of asked.tags) if (!(tag instanceof Doubt)) animals.set(tag.key, notMet);
  const found = [...cases(tags, dates, gapDays, undefined, animals)];
  // The cases of an animal lie side by side and begin with its first.
  const starts: number[] = [];
  found.forEach(({ number }, at) => {
    if (number === 1) starts.push(at);
  });
  const numberOf = (tag: Tag, day: Day): number | NoCase => {
    const animal = animals.get(tag.key) ?? notMet;
    if (animal === notMet) return { none: `${tag.shown} has no record`, asked: "tag" };
    const start = starts[animal] as number;
    const end = starts[animal + 1] ?? found.length;
    const next = firstBegunAfter(found, start, end, day);
    const before = next > start ? (found[next - 1] as Case) : undefined;
    if (before !== undefined && day <= before.last) return before.number;
    const after = next < end ? (found[next] as Case) : undefined;
    return { none: `${tag.shown} has no case on ${showDay(day)}; ${nearest(before, after, day)}`, asked: "date" };
  };
  return asked.days.map((day, index) => {
    const tag = asked.tags[index] as Tag | Doubt;
    if (tag instanceof Doubt) return notKnown(tag.sentence);
    if (day instanceof Doubt) return notKnown(day.sentence);
    const own = ofAnimal.get(tag.key);
    if (own !== undefined) return notKnown(doubtInWords(own, rowOf));
    const answer = numberOf(tag, day);
    if (typeof answer === "number")
      return untaggedFrom > day
        ? answer
        : notKnown(`${answer} by the records with tags; ${doubtInWords(untagged, rowOf)}`);
    return untagged.length === 0 ? answer : notKnown(`not known: ${doubtInWords(untagged, rowOf)}`);
  });
}

const notKnown = (none: string): NoCase => ({ none, asked: undefined });

/** The place of the first case between two places that begins after a day, by halving; the end when none does. */
function firstBegunAfter(found: readonly Case[], start: number, end: number, day: Day): number {
  let low = start;
  let high = end;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((found[middle] as Case).first <= day) low = middle + 1;
    else high = middle;
  }
  return low;
}

function nearest(before: Case | undefined, after: Case | undefined, day: Day): string {
  const near =
    before === undefined || (after !== undefined && after.first - day < day - before.last) ? (after as Case) : before;
  const span =
    near.first === near.last ? `on ${showDay(near.first)}` : `from ${showDay(near.first)} to ${showDay(near.last)}`;
  return `the nearest is case ${near.number}, ${span}`;
}
