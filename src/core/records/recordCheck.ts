import type { Cell, Cells } from "../../cells/cell.ts";
import { isBlankCell, showCell } from "../../cells/cell.ts";
import type { Fault } from "../../cells/fault.ts";
import { Problem } from "../../cells/problem.ts";
import { alikeTags } from "./alikeTags.ts";
import type { CheckOptions } from "./fieldChecks.ts";
import { lostZeros } from "./lostZeros.ts";
import { dayIn, type FieldColumn, readField, readInSteps } from "./readField.ts";
import { readTags, type TagColumn } from "./readTags.ts";
import { type RecordField, recordField } from "./recordFields.ts";
import { recordRules } from "./recordRules.ts";
import { repeatedRecords } from "./repeatedRecords.ts";

/** One heading and what it was taken for. */
export interface RecordColumn {
  readonly heading: string;
  /** 0-based place in the heading row. */
  readonly place: number;
  /** What the column is checked as; undefined when it is not checked. */
  readonly field: RecordField | undefined;
  /** The earlier heading that already stands for the same thing; then this column is not checked. */
  readonly repeats?: string;
}

interface RecordFinding {
  /** Counted from the row that the first record is called. */
  readonly row: number;
  readonly heading: string;
  readonly field: RecordField;
  readonly what: string;
  readonly mend: string;
}

export interface RecordReport {
  readonly columns: readonly RecordColumn[];
  /** By row, then in the order of the columns. */
  readonly findings: readonly RecordFinding[];
  /** Rows that hold anything. */
  readonly records: number;
}

/**
 * Looks through treatment records for slips of the hand: missing tags, dates in the wrong order or kept as text, repeated
 * records, unknown lesions, doses and weights out of range, treatments without withdrawal days. Changes nothing.
 *
 * @param headings - the heading row; columns are known by plain words in any order
 * @param rows - the cells under the headings, whole blank rows allowed
 * @throws Problem when no heading is known or the widths differ
 * @see common practice, no source
 * @example
 * recordCheck(["Tag", "Date treated"], [["042", "12/3"]], { asOf: undefined, dayOffset: 0 }).findings
 * // → [{ row: 1, heading: "Date treated", field: "treated", what: '"12/3" is not a date', mend: "enter a real date, …" }]
 */
export function recordCheck(headings: readonly Cell[], rows: Cells, options: CheckOptions): RecordReport {
  const { firstRow = 1 } = options;
  const columns = recordColumns(headings);
  const width = rows[0]?.length ?? 0;
  // A range that is blank throughout arrives without its width from some spreadsheets, and has nothing to check.
  if (width !== headings.length && !rows.every((cells) => cells.every(isBlankCell)))
    throw new Problem(
      `the width in columns is ${width}, that of the headings ${headings.length}; give both the same columns`,
      {
        argument: "rows",
      },
    );
  const checked = columns.filter((column): column is CheckedColumn => column.field !== undefined);
  if (checked.length === 0)
    throw new Problem(
      `none of ${headings.map(showCell).join(", ")} is known; use headings such as tag, date treated, lesion, withdrawal days`,
      { argument: "headings" },
    );

  const ofTag = checked.find(({ field }) => field === "tag");
  const tags = ofTag && readTags(ofTag.place, rows.length);
  const inSteps = checked.map((column) =>
    column === ofTag && tags ? tags : readField(column.field, column.place, rows.length, options),
  );
  readInSteps(rows, inSteps);
  const read = new Map(checked.map(({ field }, index) => [field, inSteps[index]?.column as FieldColumn]));
  const ofTags = ofTag && tags && tagFindings(rows, ofTag.place, tags.column, read, firstRow);
  const isAmiss = new Uint8Array(rows.length);
  for (const byRow of [...[...read.values()].map(({ faults }) => faults), ...(ofTags ?? [])])
    for (const row of byRow.keys()) isAmiss[row] = 1;

  const faultsBetween = recordRules((field) => read.get(field));
  const findings: RecordFinding[] = [];
  let records = 0;
  for (let index = 0; index < rows.length; index++) {
    // Where blanks arrive as 0, a row of blanks is a row of zeros.
    if ((rows[index] as readonly Cell[]).every(isBlankOrZero)) continue;
    records++;
    const between = faultsBetween(index);
    if (isAmiss[index] === 0 && between.length === 0) continue;
    for (const { heading, field } of checked) {
      const found = [
        read.get(field)?.faults.get(index),
        ...between.filter((fault) => fault.field === field),
        ...(field === "tag" ? (ofTags ?? []) : []).map((byRow) => byRow.get(index)),
      ];
      for (const fault of found)
        if (fault !== undefined)
          findings.push({ row: index + firstRow, heading, field, what: fault.what, mend: fault.mend });
    }
  }
  return { columns, findings, records };
}

/**
 * What shows only among all tags: zeros lost at the front, tags that may be one animal, and records entered twice.
 *
 * @param read - all columns as read
 */
function tagFindings(
  rows: Cells,
  place: number,
  tags: TagColumn,
  read: ReadonlyMap<RecordField, FieldColumn>,
  firstRow: number,
): readonly ReadonlyMap<number, Fault>[] {
  const [treated, seen] = [read.get("treated"), read.get("seen lame")];
  const when = (row: number): number | undefined => (treated && dayIn(treated, row)) ?? (seen && dayIn(seen, row));
  const columns = [...read.values()];
  const spelled = (row: number): string =>
    JSON.stringify(columns.map(({ values, faults }) => values[row] ?? faults.get(row)?.what ?? ""));
  const repeats = [...repeatedRecords(tags, when, spelled)].map(
    ([row, first]) =>
      [
        row,
        { what: `the same record as row ${first + firstRow}`, mend: "delete one of the two if it was entered twice" },
      ] as const,
  );
  return [lostZeros(rows, place, tags.newSpellings), alikeTags(tags, firstRow), new Map(repeats)];
}

const isBlankOrZero = (cell: Cell): boolean => cell === 0 || isBlankCell(cell);

type CheckedColumn = RecordColumn & { readonly field: RecordField };

function recordColumns(headings: readonly Cell[]): readonly RecordColumn[] {
  const taken = new Map<RecordField, string>();
  return headings.map((cell, index) => {
    const heading = typeof cell === "string" ? cell.trim() : isBlankCell(cell) ? "" : showCell(cell);
    const field = recordField(heading);
    const repeats = field && taken.get(field);
    if (repeats !== undefined) return { heading, place: index, field: undefined, repeats };
    if (field !== undefined) taken.set(field, heading);
    return { heading, place: index, field };
  });
}
