import type { Cells } from "../../cells/cell.ts";
import type { Fault } from "../../cells/fault.ts";
import { type CheckOptions, fieldReader, soundNumbers } from "./fieldChecks.ts";
import type { RecordField } from "./recordFields.ts";

/** A column as read, row by row. */
export interface FieldColumn {
  /** What each cell holds; undefined where it is blank or cannot be read. */
  readonly values: readonly (number | string | undefined)[];
  /** What is wrong with a cell, by its row. */
  readonly faults: ReadonlyMap<number, Fault>;
}

/** Reads a column in steps, so that the steps of several columns can take turns. */
export interface ColumnInSteps<C extends FieldColumn> {
  readonly column: C;
  /** Reads the cells of some rows that come next. */
  readonly read: (rows: Cells, from: number, to: number) => void;
}

/** @param place - 0-based column among the cells */
export function readField(
  field: RecordField,
  place: number,
  height: number,
  options: CheckOptions,
): ColumnInSteps<FieldColumn> {
  const readCell = fieldReader(field, options);
  const { least, most, added } = soundNumbers(field, options);
  const values = new Array<number | string | undefined>(height);
  const faults = new Map<number, Fault>();
  return {
    column: { values, faults },
    read(rows, from, to) {
      for (let row = from; row < to; row++) {
        const cell = rows[row]?.[place] ?? null;
        if (typeof cell === "number" && cell >= least && cell <= most && Number.isInteger(cell)) {
          // Adding 0 makes a minus zero a plain one.
          values[row] = cell + added;
          continue;
        }
        const { value, fault } = readCell(cell);
        values[row] = value;
        if (fault !== undefined) faults.set(row, fault);
      }
    },
  };
}

// A row's cells lie far from those of other columns' rows and near each other: so many rows are still near the processor
// when the next column is read, and fetching them takes longer than reading them.
const rowsInStep = 500;

/** Reads several columns side by side. */
export function readInSteps(rows: Cells, columns: readonly ColumnInSteps<FieldColumn>[]): void {
  for (let from = 0; from < rows.length; from += rowsInStep) {
    const to = Math.min(from + rowsInStep, rows.length);
    for (const { read } of columns) read(rows, from, to);
  }
}

/** Whether the cell of a row is filled, even with something that cannot be read. */
export const isFilled = ({ values, faults }: FieldColumn, row: number): boolean =>
  values[row] !== undefined || (faults.size > 0 && faults.has(row));

/** The day, or number of days, in a row. */
export const dayIn = ({ values }: FieldColumn, row: number): number | undefined => {
  const value = values[row];
  return typeof value === "number" ? value : undefined;
};
