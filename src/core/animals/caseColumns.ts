import type { Day } from "../../cells/day.ts";
import type { Foot } from "../words/footNames.ts";
import type { Tag } from "../words/tagKey.ts";
import { rowsByAnimal } from "./rowsByAnimal.ts";

/** A foot, or that the record names none while others do. */
export type CaseFoot = Foot | "not recorded";

/**
 * Cases in columns, a place a case: there may be as many as records, and an object for each would take more time than the
 * finding of it. What they hold is told at `Case`.
 */
export interface CaseColumns {
  readonly count: number;
  /** A record of the case's animal: its first as the records came. */
  readonly record: Int32Array;
  readonly number: Int32Array;
  readonly first: Int32Array;
  readonly last: Int32Array;
  readonly treatments: Int32Array;
  /** Undefined when cases were not told apart by foot. */
  readonly foot: readonly CaseFoot[] | undefined;
}

/**
 * Gathers records into cases as `cases` does.
 *
 * @param animals - the animals wanted, as `rowsByAnimal` takes them; left out for all
 * @returns the cases, animals in order of first record row, each animal's cases in order of first day
 * @example
 * [...caseColumns([a, a, a], [46063, 46070, 46100], 14).treatments] // → [2, 1]
 */
export function caseColumns(
  tags: readonly Tag[],
  dates: readonly Day[],
  gapDays: number,
  feet?: readonly (readonly Foot[] | undefined)[],
  animals?: Map<string, number>,
): CaseColumns {
  const { order, starts, firstRow } = rowsByAnimal(tags, dates, animals);
  const most = feet === undefined ? order.length : named(feet);
  const column = () => new Int32Array(most);
  const [record, number, first, last, treatments] = [column(), column(), column(), column(), column()];
  const foot: CaseFoot[] = [];
  let count = 0;
  const begin = (animal: number, before: number, day: Day): number => {
    record[count] = firstRow[animal] as number;
    number[count] = count - before + 1;
    first[count] = day;
    last[count] = day;
    treatments[count] = 1;
    return count++;
  };
  /** Adds a record to an open case, if it lies within the gap. */
  const joins = (open: number | undefined, day: Day): boolean => {
    if (open === undefined || day - (last[open] as number) > gapDays) return false;
    last[open] = day;
    treatments[open] = (treatments[open] as number) + 1;
    return true;
  };
  const ofFoot = new Map<CaseFoot, number>();
  for (let animal = 0; animal < firstRow.length; animal++) {
    const before = count;
    const end = starts[animal + 1] as number;
    let open: number | undefined;
    // A Map that is cleared makes its tables anew, even where nothing was in them.
    if (ofFoot.size > 0) ofFoot.clear();
    for (let at = starts[animal] as number; at < end; at++) {
      const row = order[at] as number;
      const day = dates[row] as Day;
      if (feet === undefined) {
        if (!joins(open, day)) open = begin(animal, before, day);
        continue;
      }
      for (const name of feet[row] ?? noFoot) {
        if (joins(ofFoot.get(name), day)) continue;
        foot.push(name);
        ofFoot.set(name, begin(animal, before, day));
      }
    }
  }
  const filled = (column: Int32Array): Int32Array => column.subarray(0, count);
  return {
    count,
    record: filled(record),
    number: filled(number),
    first: filled(first),
    last: filled(last),
    treatments: filled(treatments),
    foot: feet && foot,
  };
}

const noFoot: readonly CaseFoot[] = ["not recorded"];

/** How many feet are named in all records, where one that names none counts for one. */
const named = (feet: readonly (readonly Foot[] | undefined)[]): number =>
  feet.reduce((sum, some) => sum + (some?.length ?? 1), 0);
