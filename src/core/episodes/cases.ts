import type { Day } from "../../cells/day.ts";
import type { Foot } from "../feet/footNames.ts";
import type { Tag } from "../tags/tagKey.ts";
import { rowsByAnimal } from "./rowsByAnimal.ts";

/** A foot, or that the record names none while others do. */
export type CaseFoot = Foot | "not recorded";

/** One case: records of one animal (and one foot), none further than the gap from the one before it. */
export interface Case {
  readonly tag: Tag;
  /** 1 for the animal's first case, in order of first record. */
  readonly number: number;
  readonly first: Day;
  readonly last: Day;
  /** Records in the case. */
  readonly treatments: number;
  /** Undefined when cases were not told apart by foot. */
  readonly foot: CaseFoot | undefined;
}

/**
 * Gathers records into cases: a record within `gapDays` of the animal's previous record belongs to the same case.
 *
 * The chain counts, not the first record: at a gap of 14 days, records on days 0, 10 and 20 are one case. With feet, each
 * foot has its own chain, and a record that names two feet counts for both. Records need no order.
 *
 * @param tags - a tag for each record
 * @param dates - the day of each record, the same length
 * @param gapDays - 0 or more; a record exactly that many days after the previous one is still the same case
 * @param feet - the feet of each record, undefined where none is recorded; left out to count whole animals
 * @returns the cases, animals in order of first record row, each animal's cases in order of first day
 * @see common practice, no source
 * @example
 * cases([a, a, a], [46063, 46070, 46100], 14)
 * // → [{ tag: a, number: 1, first: 46063, last: 46070, treatments: 2, foot: undefined },
 * //    { tag: a, number: 2, first: 46100, last: 46100, treatments: 1, foot: undefined }]
 */
export function cases(
  tags: readonly Tag[],
  dates: readonly Day[],
  gapDays: number,
  feet?: readonly (readonly Foot[] | undefined)[],
): readonly Case[] {
  const found: Open[] = [];
  const { order, starts, firstRow } = rowsByAnimal(tags, dates);
  for (let animal = 0; animal < firstRow.length; animal++) {
    const tag = tags[firstRow[animal] as number] as Tag;
    const open = new Map<CaseFoot | undefined, Open>();
    let number = 0;
    for (let at = starts[animal] as number; at < (starts[animal + 1] as number); at++) {
      const row = order[at] as number;
      const day = dates[row] as Day;
      for (const foot of feet === undefined ? wholeAnimal : (feet[row] ?? noFoot)) {
        const current = open.get(foot);
        if (current !== undefined && day - current.last <= gapDays) {
          current.last = day;
          current.treatments++;
        } else {
          number++;
          const begun = { tag, number, first: day, last: day, treatments: 1, foot };
          open.set(foot, begun);
          found.push(begun);
        }
      }
    }
  }
  return found;
}

type Open = { -readonly [K in keyof Case]: Case[K] };

const wholeAnimal: readonly (CaseFoot | undefined)[] = [undefined];
const noFoot: readonly CaseFoot[] = ["not recorded"];
