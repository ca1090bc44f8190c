import type { Day } from "../../cells/day.ts";
import { showDay } from "../../cells/day.ts";
import type { Tag } from "../tags/tagKey.ts";
import { type Case, cases } from "./cases.ts";
import { notMet } from "./rowsByAnimal.ts";

/** Why a day belongs to no case of its animal. */
export interface NoCase {
  readonly none: string;
  /** What was asked in vain: an animal without any record, or a day that lies in none of its cases. */
  readonly asked: "tag" | "date";
}

/** Questions in columns of the same length: a day, and the animal it is about. */
interface Asked {
  readonly tags: readonly Tag[];
  readonly days: readonly Day[];
}

/**
 * Which case of the animal each asked day falls in, from its first record to its last.
 *
 * @param tags - a tag for each record
 * @param dates - the day of each record
 * @returns the number of the case, 1 for the first, or why there is none: the animal has no record, or the day lies in
 *   none of its cases
 * @example
 * caseNumbers({ tags: [a], days: [46065] }, [a, a], [46063, 46070], 14) // → [1]
 */
export function caseNumbers(
  asked: Asked,
  tags: readonly Tag[],
  dates: readonly Day[],
  gapDays: number,
): readonly (number | NoCase)[] {
  // Only these: often it is one animal among thousands.
  const animals = new Map<string, number>();
  for (const { key } of asked.tags) animals.set(key, notMet);
  const found = [...cases(tags, dates, gapDays, undefined, animals)];
  // The cases of an animal lie side by side and begin with its first.
  const starts: number[] = [];
  found.forEach(({ number }, at) => {
    if (number === 1) starts.push(at);
  });
  return asked.days.map((day, index) => {
    const tag = asked.tags[index] as Tag;
    const animal = animals.get(tag.key) ?? notMet;
    if (animal === notMet) return { none: `${tag.shown} has no record`, asked: "tag" };
    const start = starts[animal] as number;
    const end = starts[animal + 1] ?? found.length;
    const next = firstBegunAfter(found, start, end, day);
    const before = next > start ? (found[next - 1] as Case) : undefined;
    if (before !== undefined && day <= before.last) return before.number;
    const after = next < end ? (found[next] as Case) : undefined;
    return { none: `${tag.shown} has no case on ${showDay(day)}; ${nearest(before, after, day)}`, asked: "date" };
  });
}

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
