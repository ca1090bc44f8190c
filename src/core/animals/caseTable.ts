import type { Doubt } from "../../cells/doubt.ts";
import type { Foot } from "../words/footNames.ts";
import type { Tag } from "../words/tagKey.ts";
import { type Case, cases } from "./cases.ts";
import { type DoubtedRecord, type DoubtedRecords, readableRecords, without } from "./readableRecords.ts";

/** A record that belongs to no case since it cannot be read. */
export interface DoubtedLine {
  readonly tag: Pick<Tag, "shown">;
  readonly number: "not known";
  /** What cannot be read, and in which row. */
  readonly first: string;
  readonly last: undefined;
  readonly treatments: undefined;
  readonly foot: undefined;
}

/**
 * The cases of each animal, after a line for each record that cannot be read: it may begin a case, join two or lengthen
 * one, so the cases of that animal are those that its other records show.
 *
 * @param feet - the feet of each record, undefined where none is recorded; left out to count whole animals
 * @param rowOf - the row of the sheet for a place in the columns
 * @example
 * [...caseTable({ tags: [a], dates: [46063] }, 14, undefined, (index) => index + 1)]
 * // → [{ tag: a, number: 1, first: 46063, last: 46063, treatments: 1, foot: undefined }]
 */
export function caseTable(
  records: DoubtedRecords,
  gapDays: number,
  feet: readonly (readonly Foot[] | undefined | Doubt)[] | undefined,
  rowOf: (index: number) => number,
): Iterable<Case | DoubtedLine> {
  const { tags, dates, doubted } = readableRecords(records, feet);
  const readFeet = feet && without(feet as readonly (readonly Foot[] | undefined)[], doubted);
  const found = cases(tags, dates, gapDays, readFeet);
  // Handed on as they are where nothing is in doubt: each pair of hands more costs as much as finding the case.
  return doubted.length === 0
    ? found
    : inTurn(
        doubted.map((record) => doubtedLine(record, rowOf)),
        found,
      );
}

function* inTurn(lines: readonly DoubtedLine[], found: Iterable<Case>): Generator<Case | DoubtedLine> {
  yield* lines;
  yield* found;
}

const doubtedLine = ({ index, tag, doubt }: DoubtedRecord, rowOf: (index: number) => number): DoubtedLine => ({
  tag: tag ?? { shown: "not known" },
  number: "not known",
  first: doubt.inRow(rowOf(index)),
  last: undefined,
  treatments: undefined,
  foot: undefined,
});
