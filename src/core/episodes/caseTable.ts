import type { Day } from "../../cells/day.ts";
import type { Doubt } from "../../cells/doubt.ts";
import type { Foot } from "../feet/footNames.ts";
import { type Case, cases } from "./cases.ts";
import { type DoubtedRecord, type DoubtedRecords, readableRecords, without } from "./readableRecords.ts";

/** A line of the table of cases: a case, or a record that belongs to none since it cannot be read. */
export interface CaseLine {
  readonly tag: string;
  readonly number: number | "not known";
  /** Day of the first record; or what cannot be read, and in which row. */
  readonly first: Day | string;
  readonly last: Day | undefined;
  readonly treatments: number | undefined;
  readonly foot: Case["foot"];
}

/**
 * The cases of each animal, after a line for each record that cannot be read: it may begin a case, join two or lengthen
 * one, so the cases of that animal are those that its other records show.
 *
 * @param feet - the feet of each record, undefined where none is recorded; left out to count whole animals
 * @param rowOf - the row of the sheet for a place in the columns
 * @example
 * [...caseTable({ tags: [a], dates: [46063] }, 14, undefined, (index) => index + 1)]
 * // → [{ tag: a.shown, number: 1, first: 46063, last: 46063, treatments: 1, foot: undefined }]
 */
export function* caseTable(
  records: DoubtedRecords,
  gapDays: number,
  feet: readonly (readonly Foot[] | undefined | Doubt)[] | undefined,
  rowOf: (index: number) => number,
): Generator<CaseLine> {
  const { tags, dates, doubted } = readableRecords(records, feet);
  for (const record of doubted) yield doubtedLine(record, rowOf);
  const readFeet = feet && without(feet as readonly (readonly Foot[] | undefined)[], doubted);
  for (const { tag, ...found } of cases(tags, dates, gapDays, readFeet)) yield { tag: tag.shown, ...found };
}

const doubtedLine = ({ index, tag, doubt }: DoubtedRecord, rowOf: (index: number) => number): CaseLine => ({
  tag: tag?.shown ?? "not known",
  number: "not known",
  first: doubt.inRow(rowOf(index)),
  last: undefined,
  treatments: undefined,
  foot: undefined,
});
