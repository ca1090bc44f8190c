import type { Cell } from "../../cells/cell.ts";
import { type Area, isInside, type Place } from "../address.ts";
import { placeKey } from "../engine.ts";
import { storedSpelling } from "../formula/storedSpelling.ts";
import type { Sheet, SheetCell } from "../model.ts";
import type { Workbook } from "../workbook.ts";
import { writeZip } from "../zip/writeZip.ts";
import { addNumberFormats, type NumberFormats } from "./addNumberFormats.ts";
import type { CellChange } from "./cellChange.ts";
import { spliceSheet } from "./spliceSheet.ts";

/** What a person typed into a cell. */
export interface Edit extends Place {
  /** The sheet by its place in the workbook. */
  readonly sheet: number;
  /** The content, or what the formula came to; null when the cell was emptied. */
  readonly value: Cell;
  /** As typed, without `=`. */
  readonly formula?: string;
  /** The number format the cell was given with it. */
  readonly format?: string;
}

/**
 * The workbook's file with cells typed anew. Formulas are not worked out: open and recalculate the result.
 *
 * @returns the file; every part without an edit keeps its bytes
 */
export function writeEdits(workbook: Workbook, edits: readonly Edit[]): Uint8Array {
  const formats = addNumberFormats(workbook.styles);
  const changed = new Map<string, string>();
  workbook.sheets.forEach((sheet, place) => {
    const onSheet = edits.filter((edit) => edit.sheet === place);
    if (onSheet.length > 0)
      changed.set(sheet.part.toLowerCase(), spliceSheet(sheet, changesFor(sheet, onSheet, formats)));
  });
  const styles = formats.text();
  const stylesPart = workbook.relationships.find(({ kind }) => kind === "styles")?.target;
  if (styles !== undefined && stylesPart !== undefined) changed.set(stylesPart.toLowerCase(), styles);
  const encoder = new TextEncoder();
  return writeZip(
    workbook.files.entries.map((entry) => {
      const text = changed.get(entry.name.toLowerCase());
      return text === undefined ? entry : { ...entry, bytes: encoder.encode(text) };
    }),
  );
}

function changesFor(sheet: Sheet, edits: readonly Edit[], formats: NumberFormats): readonly CellChange[] {
  const cells = new Map<number, SheetCell>();
  for (const row of sheet.rows) for (const cell of row.cells) cells.set(placeKey(cell.row, cell.column), cell);
  const changes = new Map<number, CellChange>();
  // An array formula that goes leaves its values behind in the cells it filled.
  for (const area of replacedAreas(edits, cells)) {
    for (const old of cells.values()) {
      if (old.formula || !isInside(old, area)) continue;
      const { row, column, style } = old;
      changes.set(placeKey(row, column), { row, column, old, value: null, style, formula: undefined });
    }
  }
  const rowStyles = new Map(sheet.rows.map(({ row, style }) => [row, style]));
  for (const { row, column, value, formula, format } of edits) {
    const old = cells.get(placeKey(row, column));
    const base = old?.style ?? rowStyles.get(row) ?? columnStyle(sheet, column);
    changes.set(placeKey(row, column), {
      row,
      column,
      old,
      value,
      style: format === undefined ? base : formats.styleWith(base, format),
      formula: formula === undefined ? undefined : { text: storedSpelling(formula) },
    });
  }
  return [...changes.values()];
}

const replacedAreas = (edits: readonly Edit[], cells: ReadonlyMap<number, SheetCell>): readonly Area[] =>
  edits.flatMap(({ row, column }) => cells.get(placeKey(row, column))?.formula?.area ?? []);

const columnStyle = ({ columnStyles }: Sheet, column: number): number =>
  columnStyles.find(({ from, to }) => column >= from && column <= to)?.style ?? 0;
