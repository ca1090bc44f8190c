import { type Cell, isBlankCell, isCellError } from "../../cells/cell.ts";
import { isoText } from "../../cells/day.ts";
import { numberIn } from "../../cells/numberIn.ts";
import type { Table } from "../tables/defineTable.ts";
import { type DateOrder, dateIn } from "./dateIn.ts";
import type { Goes } from "./matchHeadings.ts";

interface Options {
  readonly dayOffset: number;
  readonly order: DateOrder | undefined;
}

export interface ReadRecord<K extends string> {
  readonly record: Partial<Record<K, Cell>>;
  /** Cells that are brought as they stand and are not what their column is to hold: heading and content. */
  readonly toMend: readonly string[];
}

/** Columns that hold numbers; a foot has the look of one, and is a word. */
const numeric: ReadonlySet<string> = new Set(["animals", "score", "ml", "withdrawalDays", "lookedAt", "lame"]);

/** More does not fit into a cell (ECMA-376 Part 1 and the vendor's published limits). */
export const mostLetters = 32_767;

/**
 * One row as a record of the book. Days and numbers that were kept as text become what they are, where there is no doubt;
 * anything else stays as it was typed. What has no column of its own goes to the note, under its heading.
 */
export function asRecord<K extends string>(
  table: Table<K>,
  headings: readonly string[],
  columns: readonly Goes<K>[],
  cells: readonly Cell[],
  { dayOffset, order }: Options,
): ReadRecord<K> {
  const record: Partial<Record<K, Cell>> = {};
  const notes: string[] = [];
  const toMend: string[] = [];
  const noteKey = "note" as K;
  columns.forEach((goes, index) => {
    const cell = cells[index] ?? null;
    if (isBlankCell(cell) || goes === "left out") return;
    const heading = headings[index] ?? "";
    if (goes === "to the note") {
      notes.push(`${heading === "" ? "" : `${heading}: `}${inNote(cell, heading, dayOffset, order)}`);
      return;
    }
    if (goes === noteKey) {
      notes.unshift(String(plain(cell)));
      return;
    }
    const { look } = table.columns[goes];
    const read =
      look === "typedDate"
        ? dateIn(cell, dayOffset, order)
        : numeric.has(goes)
          ? numberIn(cell)
          : isCellError(cell)
            ? undefined
            : plain(cell);
    record[goes] = read ?? plain(cell);
    if (read === undefined) toMend.push(`${heading} ${String(plain(cell))}`);
  });
  if (notes.length > 0) record[noteKey] = notes.join("; ");
  return { record, toMend };
}

/** An error cannot be typed into a sheet; its words can, and the check of the records names them. */
const plain = (cell: Cell): string | number => {
  if (isCellError(cell)) return cell.error;
  if (typeof cell === "boolean") return cell ? "TRUE" : "FALSE";
  return cell ?? "";
};

function inNote(cell: Cell, heading: string, dayOffset: number, order: DateOrder | undefined): string {
  // A number alone does not say that it is a day.
  const day = typeof cell !== "number" || saysDay.test(heading) ? dateIn(cell, dayOffset, order) : undefined;
  return day === undefined ? String(plain(cell)) : isoText(day);
}

const saysDay = /\b(?:date|day|started|begun|until|ends?|clear|review)\b/i;
