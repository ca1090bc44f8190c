import type { Day } from "../../cells/day.ts";
import { showDay } from "../../cells/day.ts";
import type { Tag } from "../tags/tagKey.ts";
import { type Case, cases } from "./cases.ts";

/** Which case of its animal a day belongs to, or why none. */
export type CaseNumber =
  | { readonly number: number }
  | {
      readonly none: string;
      /** What was asked in vain: an animal without any record, or a day that lies in none of its cases. */
      readonly asked: "tag" | "date";
    };

/**
 * Which case of the animal each asked day falls in, from its first record to its last.
 *
 * @param asked - tag and day of each question
 * @param tags - a tag for each record
 * @param dates - the day of each record
 * @returns the case number, or a sentence when the animal has no record or the day lies in none of its cases
 * @example
 * caseNumbers([{ tag: a, day: 46065 }], [a, a], [46063, 46070], 14) // → [{ number: 1 }]
 */
export function caseNumbers(
  asked: readonly { readonly tag: Tag; readonly day: Day }[],
  tags: readonly Tag[],
  dates: readonly Day[],
  gapDays: number,
): readonly CaseNumber[] {
  const ofAnimal = new Map<string, Case[]>(asked.map(({ tag }) => [tag.key, []]));
  const rows = tags.flatMap((tag, row) => (ofAnimal.has(tag.key) ? [row] : []));
  const found = cases(
    rows.map((row) => tags[row] as Tag),
    rows.map((row) => dates[row] as Day),
    gapDays,
  );
  for (const one of found) ofAnimal.get(one.tag.key)?.push(one);
  return asked.map(({ tag, day }) => {
    const own = ofAnimal.get(tag.key) ?? [];
    const before = lastBegun(own, day);
    const hit = own[before];
    if (hit !== undefined && day <= hit.last) return { number: hit.number };
    if (own.length === 0) return { none: `${tag.shown} has no record`, asked: "tag" };
    return {
      none: `${tag.shown} has no case on ${showDay(day)}; ${nearest(hit, own[before + 1], day)}`,
      asked: "date",
    };
  });
}

/** The place of the last case that begins no later than a day, by halving; -1 when all begin later. */
function lastBegun(own: readonly Case[], day: Day): number {
  let low = 0;
  let high = own.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((own[middle] as Case).first <= day) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

function nearest(before: Case | undefined, after: Case | undefined, day: Day): string {
  const near =
    before === undefined || (after !== undefined && after.first - day < day - before.last) ? (after as Case) : before;
  const span =
    near.first === near.last ? `on ${showDay(near.first)}` : `from ${showDay(near.first)} to ${showDay(near.last)}`;
  return `the nearest is case ${near.number}, ${span}`;
}
