import type { Day } from "../../cells/day.ts";
import type { Foot } from "../words/footNames.ts";
import type { Tag } from "../words/tagKey.ts";
import { type CaseFoot, caseColumns } from "./caseColumns.ts";

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
  const found = caseColumns(tags, dates, gapDays, feet, animals);
  for (let place = 0; place < found.count; place++)
    yield {
      tag: tags[found.record[place] as number] as Tag,
      number: found.number[place] as number,
      first: found.first[place] as Day,
      last: found.last[place] as Day,
      treatments: found.treatments[place] as number,
      foot: found.foot?.[place],
    };
}
