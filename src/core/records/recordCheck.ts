import type { Cell, Cells } from "../../cells/cell.ts";
import { isBlankCell, showCell } from "../../cells/cell.ts";
import type { Fault } from "../../cells/fault.ts";
import { Problem } from "../../cells/problem.ts";
import { alikeTags } from "./alikeTags.ts";
import { type CheckOptions, fieldReader, type Reading } from "./fieldChecks.ts";
import { lostZeros } from "./lostZeros.ts";
import { type RecordField, recordField } from "./recordFields.ts";
import { type RecordValues, recordRules } from "./recordRules.ts";
import { repeatFinder } from "./repeatFinder.ts";

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
  /** 1-based row within the rows given. */
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

  // The tag of the row at hand, where it is spelt so for the first time.
  const first: { tag: Reading | undefined } = { tag: undefined };
  const firstTag = (): Reading | undefined => first.tag;
  const noteTag = (reading: Reading): void => {
    first.tag = reading;
  };
  const readers = checked.map(({ field, place }) => ({
    place,
    read: fieldReader(field, options, field === "tag" ? noteTag : undefined),
  }));
  // One list for all rows, which the checks look into: a new one for each row costs more than the checks.
  const readings: Reading[] = readers.map(() => ({}));
  const readRow = (cells: readonly Cell[]): void => {
    for (let at = 0; at < readers.length; at++) {
      const { place, read } = readers[at] as (typeof readers)[number];
      readings[at] = read(cells[place] ?? null);
    }
  };
  const placeOf = new Map(checked.map(({ field }, at) => [field, at]));
  const readingOf = (field: RecordField): Reading | undefined => readings[placeOf.get(field) ?? -1];
  const faultsBetween = recordRules((field) => placeOf.has(field));
  const record: RecordValues = {
    filled: (field) => isFilled(readingOf(field)),
    day: (field) => numberOf(readingOf(field)?.value),
  };
  const repeatOf = repeatFinder((index) => {
    readRow(rows[index] ?? []);
    return JSON.stringify(readings.map(({ value, fault }) => value ?? fault?.what ?? ""));
  });

  const findings: RecordFinding[] = [];
  const add = (row: number, { heading, field }: CheckedColumn, fault: Fault | undefined): void => {
    if (fault !== undefined) findings.push({ row, heading, field, what: fault.what, mend: fault.mend });
  };
  const alike = alikeTags();
  const tagPlace = checked.find(({ field }) => field === "tag")?.place ?? -1;
  const zeros = lostZeros(rows, tagPlace === -1 ? undefined : tagPlace);
  let records = 0;
  rows.forEach((cells, index) => {
    // Where blanks arrive as 0, a row of blanks is a row of zeros.
    if (cells.every((cell) => isBlankCell(cell) || cell === 0)) return;
    records++;
    const row = index + 1;
    first.tag = undefined;
    readRow(cells);
    const faults = readings.map(({ fault }) => fault);
    const between = faultsBetween(record);
    // Last, since it may read other rows into the list.
    const when = record.day("treated") ?? record.day("seen lame");
    const spelt = firstTag()?.value;
    const pair = typeof spelt === "string" ? alike(spelt, cells[tagPlace] ?? null, index) : undefined;
    const repeated = repeatOf(readingOf("tag")?.value, when, index);
    checked.forEach((column, at) => {
      add(row, column, faults[at]);
      for (const fault of between) if (fault.field === column.field) add(row, column, fault);
      if (column.field !== "tag") return;
      add(row, column, zeros(cells[column.place] ?? null));
      add(row, column, pair);
      if (repeated !== undefined)
        add(row, column, {
          what: `the same record as row ${repeated + 1}`,
          mend: "delete one of the two if it was entered twice",
        });
    });
  });
  return { columns, findings, records };
}

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

const isFilled = (reading: Reading | undefined): boolean =>
  reading !== undefined && (reading.value !== undefined || reading.fault !== undefined);

const numberOf = (value: number | string | undefined): number | undefined =>
  typeof value === "number" ? value : undefined;
