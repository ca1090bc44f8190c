import type { Day } from "../../cells/day.ts";
import type { Foot } from "../words/footNames.ts";
import type { Tag } from "../words/tagKey.ts";
import { rowsByAnimal } from "./rowsByAnimal.ts";

/** A foot, or that the record names none while others do. */
type CaseFoot = Foot | "not recorded";

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
 * @param animals - the animals wanted, as `rowsByAnimal` takes them; left out for all
 * @returns the cases, animals in order of first record row, each animal's cases in order of first day
 * @see common practice, no source
 * @example
 * [...cases([a, a, a], [46063, 46070, 46100], 14)]
 * // → [{ tag: a, number: 1, first: 46063, last: 46070, treatments: 2, foot: undefined },
 * //    { tag: a, number: 2, first: 46100, last: 46100, treatments: 1, foot: undefined }]
 */
export function* cases(
  tags: readonly Tag[],
  dates: readonly Day[],
  gapDays: number,
  feet?: readonly (readonly Foot[] | undefined)[],
  animals?: Map<string, number>,
): Generator<Case> {
  const { order, starts, firstRow } = rowsByAnimal(tags, dates, animals);
  const ofFoot = new Map<CaseFoot, Open>();
  for (let animal = 0; animal < firstRow.length; animal++) {
    const tag = tags[firstRow[animal] as number] as Tag;
    const [start, end] = [starts[animal] as number, starts[animal + 1] as number];
    if (feet !== undefined) {
      const found: Open[] = [];
      ofFoot.clear();
      for (let at = start; at < end; at++) {
        const row = order[at] as number;
        const day = dates[row] as Day;
        for (const foot of feet[row] ?? noFoot) {
          if (joins(ofFoot.get(foot), day, gapDays)) continue;
          const begun = begin(tag, found.length + 1, day, foot);
          ofFoot.set(foot, begun);
          found.push(begun);
        }
      }
      yield* found;
      continue;
    }
    // A case is over before the next begins, so none need be kept.
    let open: Open | undefined;
    for (let at = start; at < end; at++) {
      const day = dates[order[at] as number] as Day;
      if (joins(open, day, gapDays)) continue;
      if (open !== undefined) yield open;
      open = begin(tag, (open?.number ?? 0) + 1, day, undefined);
    }
    if (open !== undefined) yield open;
  }
}

/** Adds the record to the open case if it lies within the gap. */
function joins(open: Open | undefined, day: Day, gapDays: number): boolean {
  if (open === undefined || day - open.last > gapDays) return false;
  open.last = day;
  open.treatments++;
  return true;
}

const begin = (tag: Tag, number: number, day: Day, foot: CaseFoot | undefined): Open => ({
  tag,
  number,
  first: day,
  last: day,
  treatments: 1,
  foot,
});

type Open = { -readonly [K in keyof Case]: Case[K] };

const noFoot: readonly CaseFoot[] = ["not recorded"];
