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
    const hit = own.find(({ first, last }) => first <= day && day <= last);
    if (hit !== undefined) return { number: hit.number };
    if (own.length === 0) return { none: `${tag.shown} has no record`, asked: "tag" };
    return { none: `${tag.shown} has no case on ${showDay(day)}; ${nearest(own, day)}`, asked: "date" };
  });
}

function nearest(own: readonly Case[], day: Day): string {
  const distance = ({ first, last }: Case): number => (day < first ? first - day : day - last);
  const near = own.reduce((a, b) => (distance(b) < distance(a) ? b : a));
  const span =
    near.first === near.last ? `on ${showDay(near.first)}` : `from ${showDay(near.first)} to ${showDay(near.last)}`;
  return `the nearest is case ${near.number}, ${span}`;
}
