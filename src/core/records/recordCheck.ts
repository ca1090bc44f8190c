import type { Cell, Cells } from "../../cells/cell.ts";
import { isBlankCell, showCell } from "../../cells/cell.ts";
import { Problem } from "../../cells/problem.ts";
import { type CheckOptions, checkField, type Reading } from "./fieldChecks.ts";
import { lostZeros } from "./lostZeros.ts";
import { type RecordField, recordField } from "./recordFields.ts";
import { recordRules } from "./recordRules.ts";

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
      `the rows are ${width} columns wide, but there are ${headings.length} headings; give both the same columns`,
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

  const findings: RecordFinding[] = [];
  const firstRowOf = new Map<string, number>();
  const zeros = lostZeros(rows, checked.find(({ field }) => field === "tag")?.place);
  let records = 0;
  rows.forEach((cells, index) => {
    // Where blanks arrive as 0, a row of blanks is a row of zeros.
    if (cells.every((cell) => isBlankCell(cell) || cell === 0)) return;
    records++;
    const row = index + 1;
    const readings = new Map<RecordField, Reading>();
    for (const { field, place } of checked) readings.set(field, checkField(field, cells[place] ?? null, options));
    const repeated = repeatOf(readings, firstRowOf, row);
    const between = recordRules({
      has: (field) => readings.has(field),
      filled: (field) => isFilled(readings.get(field)),
      day: (field) => numberOf(readings.get(field)?.value),
    });
    for (const { field, heading, place } of checked) {
      const add = (fault: { readonly what: string; readonly mend: string } | undefined): void => {
        if (fault !== undefined) findings.push({ row, heading, field, what: fault.what, mend: fault.mend });
      };
      add(readings.get(field)?.fault);
      for (const fault of between) if (fault.field === field) add(fault);
      if (field !== "tag") continue;
      add(zeros(cells[place] ?? null));
      if (repeated !== undefined)
        add({ what: `the same record as row ${repeated}`, mend: "delete one of the two if it was entered twice" });
    }
  });
  return { columns, findings, records };
}

type CheckedColumn = RecordColumn & { readonly field: RecordField };

function recordColumns(headings: readonly Cell[]): readonly RecordColumn[] {
  const taken = new Map<RecordField, string>();
  return headings.map((cell, place) => {
    const heading = typeof cell === "string" ? cell.trim() : isBlankCell(cell) ? "" : showCell(cell);
    const field = recordField(heading);
    const repeats = field && taken.get(field);
    if (repeats !== undefined) return { heading, place, field: undefined, repeats };
    if (field !== undefined) taken.set(field, heading);
    return { heading, place, field };
  });
}

const isFilled = (reading: Reading | undefined): boolean =>
  reading !== undefined && (reading.value !== undefined || reading.fault !== undefined);

const numberOf = (value: number | string | undefined): number | undefined =>
  typeof value === "number" ? value : undefined;

// One record entered twice has the same animal and day, and differs in nothing else that was read.
function repeatOf(
  readings: ReadonlyMap<RecordField, Reading>,
  firstRowOf: Map<string, number>,
  row: number,
): number | undefined {
  const animal = readings.get("tag")?.value;
  const when = readings.get("treated")?.value ?? readings.get("seen lame")?.value;
  if (animal === undefined || when === undefined) return undefined;
  const record = JSON.stringify([...readings.values()].map(({ value, fault }) => value ?? fault?.what ?? ""));
  const first = firstRowOf.get(record);
  if (first === undefined) firstRowOf.set(record, row);
  return first;
}
