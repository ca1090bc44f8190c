import type { Cell } from "../../cells/cell.ts";
import { type Area, isInside, type Place } from "../address.ts";
import { placeKey } from "../engine.ts";
import { storedSpelling } from "../formula/storedSpelling.ts";
import type { Sheet, SheetCell } from "../model.ts";
import { openWorkbook } from "../openWorkbook.ts";
import type { Workbook } from "../workbook.ts";
import type { Worked } from "../workOut.ts";
import { writeZip } from "../zip/writeZip.ts";
import { addNumberFormats, type NumberFormats } from "./addNumberFormats.ts";
import type { CellChange } from "./cellChange.ts";
import { cellsOf, giveOwnText } from "./changesOf.ts";
import { entriesWith } from "./entriesWith.ts";
import { PartList } from "./partList.ts";
import { saveWorkbook } from "./saveWorkbook.ts";
import { spliceSheet } from "./spliceSheet.ts";

/** What a person typed into a cell. */
export interface Edit extends Place {
  /** The sheet by its place in the workbook. */
  readonly sheet: number;
  /** The content, or what the formula came to; null when the cell was emptied. */
  readonly value: Cell;
  /** As typed, without `=`. */
  readonly formula?: string;
  /** The formula may give more than one cell, or works on ranges inside: stored as a plain one, it would be cut down. */
  readonly array?: boolean;
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
  const arrays: Edit[] = [];
  let formulaGone = false;
  workbook.sheets.forEach((sheet, index) => {
    const typed = edits.filter((edit) => edit.sheet === index);
    if (typed.length === 0) return;
    const cells = cellsOf(sheet);
    const all = [...typed, ...withoutRoom(typed, cells)];
    const changes = changesFor(sheet, cells, all, formats);
    formulaGone ||= changes.some(({ old, formula }) => old?.formula !== undefined && formula === undefined);
    arrays.push(...all.filter(({ array }) => array));
    changed.set(sheet.part, spliceSheet(sheet, changes));
  });
  const styles = formats.text();
  const stylesPart = workbook.relationships.find(({ kind }) => kind === "styles")?.target;
  if (styles !== undefined && stylesPart !== undefined) changed.set(stylesPart, styles);
  const list = new PartList(workbook);
  // The order of calculation names a cell that holds no formula any more; the spreadsheet makes it anew.
  if (formulaGone) list.drop("calcChain");
  for (const [part, text] of list.texts()) changed.set(part, text);
  const bytes = writeZip(entriesWith(workbook.files.entries, changed, list.dropped));
  return arrays.length === 0 ? bytes : withArrays(bytes, arrays);
}

/** Array formulas into whose cells something else was typed: each goes back to its own cell, and will say `#SPILL!`. */
function withoutRoom(typed: readonly Edit[], cells: ReadonlyMap<number, SheetCell>): readonly Edit[] {
  const [{ sheet = 0 } = {}] = typed;
  const places = new Set(typed.map(({ row, column }) => placeKey(row, column)));
  const filling = typed.filter(({ value, formula }) => value !== null || formula !== undefined);
  return [...cells.values()].flatMap(({ row, column, value, formula }): Edit[] => {
    const area = formula?.area;
    if (!area || places.has(placeKey(row, column)) || !filling.some((edit) => isInside(edit, area))) return [];
    return [{ sheet, row, column, value, formula: formula.text, array: true }];
  });
}

function changesFor(
  sheet: Sheet,
  cells: ReadonlyMap<number, SheetCell>,
  edits: readonly Edit[],
  formats: NumberFormats,
): readonly CellChange[] {
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
  giveOwnText(() => cells, changes);
  return [...changes.values()];
}

const replacedAreas = (edits: readonly Edit[], cells: ReadonlyMap<number, SheetCell>): readonly Area[] =>
  edits.flatMap(({ row, column }) => cells.get(placeKey(row, column))?.formula?.area ?? []);

const columnStyle = ({ columnStyles }: Sheet, column: number): number =>
  columnStyles.find(({ from, to }) => column >= from && column <= to)?.style ?? 0;

/** The file with these formulas as dynamic array formulas, each over its own cell until it is worked out. */
function withArrays(bytes: Uint8Array, arrays: readonly Edit[]): Uint8Array {
  const workbook = openWorkbook(bytes);
  const sheets = workbook.sheets.map((sheet, index) => {
    const cells = cellsOf(sheet);
    return arrays.flatMap(({ sheet: on, row, column, value }): Worked[] => {
      const cell = on === index ? cells.get(placeKey(row, column)) : undefined;
      return cell ? [{ cell, traits: fillsCells, answer: { value } }] : [];
    });
  });
  return saveWorkbook(workbook, { sheets }).bytes;
}

// What calls a FOOT function is always stored so, and these are to be stored in the same way.
const fillsCells = { calls: [], foot: true, forCalc: false, dynamic: true };
