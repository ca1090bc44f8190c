import type { Cells } from "../../cells/cell.ts";
import type { Fault } from "../../cells/fault.ts";
import { type CheckOptions, fieldReader } from "./fieldChecks.ts";
import type { RecordField } from "./recordFields.ts";

/** A column as read, row by row. */
export interface FieldColumn {
  /** What each cell holds; undefined where it is blank or cannot be read. */
  readonly values: readonly (number | string | undefined)[];
  /** What is wrong with a cell, by its row. */
  readonly faults: ReadonlyMap<number, Fault>;
}

/** @param place - 0-based column among the cells */
export function readField(field: RecordField, rows: Cells, place: number, options: CheckOptions): FieldColumn {
  const read = fieldReader(field, options);
  const values = new Array<number | string | undefined>(rows.length);
  const faults = new Map<number, Fault>();
  for (let row = 0; row < rows.length; row++) {
    const { value, fault } = read(rows[row]?.[place] ?? null);
    values[row] = value;
    if (fault !== undefined) faults.set(row, fault);
  }
  return { values, faults };
}

/** Whether the cell of a row is filled, even with something that cannot be read. */
export const isFilled = ({ values, faults }: FieldColumn, row: number): boolean =>
  values[row] !== undefined || (faults.size > 0 && faults.has(row));

/** The day, or number of days, in a row. */
export const dayIn = ({ values }: FieldColumn, row: number): number | undefined => {
  const value = values[row];
  return typeof value === "number" ? value : undefined;
};
