import type { Day } from "../../cells/day.ts";
import type { Doubt } from "../../cells/doubt.ts";
import type { Foot } from "../words/footNames.ts";
import type { Tag } from "../words/tagKey.ts";
import { type CaseFoot, caseColumns } from "./caseColumns.ts";
import { type DoubtedRecord, type DoubtedRecords, readableRecords, without } from "./readableRecords.ts";

/** Cases, line by line, asked for by the place of the line: see `Case`. */
export interface CaseTable {
  readonly count: number;
  readonly tag: (line: number) => string;
  /** "not known" for a record that belongs to no case since it cannot be read. */
  readonly number: (line: number) => number | "not known";
  /** For such a record: what cannot be read, and in which row. */
  readonly first: (line: number) => Day | string;
  readonly last: (line: number) => Day | undefined;
  readonly treatments: (line: number) => number | undefined;
  readonly foot: (line: number) => CaseFoot | undefined;
}

/**
 * The cases of each animal, after a line for each record that cannot be read: it may begin a case, join two or lengthen
 * one, so the cases of that animal are those that its other records show.
 *
 * @param feet - the feet of each record, undefined where none is recorded; left out to count whole animals
 * @param rowOf - the row of the sheet for a place in the columns
 * @example
 * caseTable({ tags: [a], dates: [46063] }, 14, undefined, (index) => index + 1).first(0) // → 46063
 */
export function caseTable(
  records: DoubtedRecords,
  gapDays: number,
  feet: readonly (readonly Foot[] | undefined | Doubt)[] | undefined,
  rowOf: (index: number) => number,
): CaseTable {
  const { tags, dates, doubted } = readableRecords(records, feet);
  const readFeet = feet && without(feet as readonly (readonly Foot[] | undefined)[], doubted);
  const found = caseColumns(tags, dates, gapDays, readFeet);
  const before = doubted.length;
  const doubt = (line: number): DoubtedRecord => doubted[line] as DoubtedRecord;
  const inCase = (column: Int32Array, line: number): number => column[line - before] as number;
  const tagIn = (line: number): Tag => tags[inCase(found.record, line)] as Tag;
  return {
    count: before + found.count,
    tag: (line) => (line < before ? (doubt(line).tag?.shown ?? "not known") : tagIn(line).shown),
    number: (line) => (line < before ? "not known" : inCase(found.number, line)),
    first: (line) => (line < before ? doubt(line).doubt.inRow(rowOf(doubt(line).index)) : inCase(found.first, line)),
    last: (line) => (line < before ? undefined : inCase(found.last, line)),
    treatments: (line) => (line < before ? undefined : inCase(found.treatments, line)),
    foot: (line) => (line < before ? undefined : found.foot?.[line - before]),
  };
}
