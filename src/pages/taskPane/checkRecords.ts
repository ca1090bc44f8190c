import type { Cell, Cells } from "../../cells/cell.ts";
import { type Day, days1904 } from "../../cells/day.ts";
import { type RecordColumn, recordCheck } from "../../core/records/recordCheck.ts";
import { placeText } from "../../workbook/address.ts";

/** Records as they lie in a sheet. */
interface RecordsInSheet {
  /** 1-based row and column of the first heading. */
  readonly top: number;
  readonly left: number;
  readonly headings: readonly Cell[];
  readonly rows: Cells;
}

export interface CheckedRecords {
  readonly records: number;
  readonly columns: readonly RecordColumn[];
  readonly findings: readonly FindingInSheet[];
}

interface FindingInSheet {
  /** The cell to look at, without its sheet. */
  readonly cell: string;
  readonly heading: string;
  readonly what: string;
  readonly mend: string;
}

/**
 * Checks records and says in which cell of the sheet each finding is.
 *
 * @param asOf - dates after this day are in the future
 * @throws Problem when no heading is known
 */
export function checkRecords(
  { top, left, headings, rows }: RecordsInSheet,
  asOf: Day,
  dateSystem: 1900 | 1904,
): CheckedRecords {
  const dayOffset = dateSystem === 1904 ? days1904 : 0;
  const { records, columns, findings } = recordCheck(headings, rows, { asOf, dayOffset, firstRow: top + 1 });
  const places = new Map(columns.map(({ field, place }) => [field, place]));
  return {
    records,
    columns,
    findings: findings.map(({ row, field, heading, what, mend }) => ({
      cell: placeText({ row: row - 1, column: left + (places.get(field) ?? 0) - 1 }),
      heading,
      what,
      mend,
    })),
  };
}
