import type { Day } from "../../cells/day.ts";
import { Doubt } from "../../cells/doubt.ts";
import type { Tag } from "../words/tagKey.ts";

/** Records as they were read: a Doubt stands where a cell cannot be. */
export interface DoubtedRecords {
  readonly tags: readonly (Tag | Doubt)[];
  readonly dates: readonly (Day | Doubt)[];
}

/** A record of which tag or day, or both, cannot be read. */
export interface DoubtedRecord {
  /** Its place in the columns. */
  readonly index: number;
  /** Undefined where the tag is what cannot be read: then it may be any animal's. */
  readonly tag: Tag | undefined;
  readonly date: Day | undefined;
  /** What cannot be read; the tag before the day. */
  readonly doubt: Doubt;
}

export interface ReadableRecords {
  readonly tags: readonly Tag[];
  readonly dates: readonly Day[];
  readonly doubted: readonly DoubtedRecord[];
}

/**
 * Parts the records that can be read from those that cannot. Columns without a Doubt are handed on as they are.
 *
 * @param further - a column more whose Doubt keeps a record from being counted
 * @example
 * readableRecords({ tags: [a, doubt], dates: [46063, 46070] }).tags // → [{ key: "A", shown: "041" }]
 */
export function readableRecords({ tags, dates }: DoubtedRecords, further?: readonly unknown[]): ReadableRecords {
  const doubted: DoubtedRecord[] = [];
  for (let index = 0; index < tags.length; index++) {
    const tag = tags[index];
    const date = dates[index];
    const more = further?.[index];
    if (!(tag instanceof Doubt) && typeof date === "number" && !(more instanceof Doubt)) continue;
    const doubt = tag instanceof Doubt ? tag : date instanceof Doubt ? date : more;
    if (!(doubt instanceof Doubt)) continue;
    doubted.push({
      index,
      tag: tag instanceof Doubt ? undefined : tag,
      date: date instanceof Doubt ? undefined : date,
      doubt,
    });
  }
  // Nothing is in doubt: the columns are those of a flock whose records can all be read.
  if (doubted.length === 0) return { tags: tags as readonly Tag[], dates: dates as readonly Day[], doubted };
  return {
    tags: without(tags as readonly Tag[], doubted),
    dates: without(dates as readonly Day[], doubted),
    doubted,
  };
}

/** A column without the records in doubt. */
export function without<T>(column: readonly T[], doubted: readonly DoubtedRecord[]): readonly T[] {
  if (doubted.length === 0) return column;
  let next = 0;
  return column.filter((_, index) => {
    if (doubted[next]?.index !== index) return true;
    next++;
    return false;
  });
}

/** Written where the tag of a record cannot be read. */
export const anyAnimal = "any animal";

/** Several records in doubt in one line: the first, and how many there are. */
export function doubtInWords(doubted: readonly DoubtedRecord[], rowOf: (index: number) => number): string {
  const [first] = doubted;
  if (first === undefined) return "";
  const others = doubted.length === 1 ? "" : `; ${doubted.length} rows are so`;
  return `${first.doubt.inRow(rowOf(first.index))}${others}`;
}

/** The records in doubt of each animal whose tag can be read, by its key. */
export function doubtedByAnimal(doubted: readonly DoubtedRecord[]): ReadonlyMap<string, readonly DoubtedRecord[]> {
  const byAnimal = new Map<string, DoubtedRecord[]>();
  for (const record of doubted) {
    if (record.tag === undefined) continue;
    const there = byAnimal.get(record.tag.key);
    if (there === undefined) byAnimal.set(record.tag.key, [record]);
    else there.push(record);
  }
  return byAnimal;
}
