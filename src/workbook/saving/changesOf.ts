import { type Cell, isCellError } from "../../cells/cell.ts";
import { type Format, patternFor } from "../../writing/format.ts";
import { type Area, isInside, isOneCell, type Place } from "../address.ts";
import { type EngineAnswer, placeKey } from "../engine.ts";
import { footName } from "../formula/functionName.ts";
import type { RowPattern } from "../formula/rowPattern.ts";
import { storedSpelling } from "../formula/storedSpelling.ts";
import type { Sheet, SheetCell, StoredFormula } from "../model.ts";
import type { Worked } from "../workOut.ts";
import { type CellChange, type FormulaChange, sameValue } from "./cellChange.ts";

export interface Saving {
  /** The cell metadata number that marks dynamic array formulas. */
  readonly dynamicMark: () => number;
  /** A cell style like this one but with this number format; the same one when it already has a format. */
  readonly styleWith: (style: number, format: string) => number;
}

/** What must change in a sheet so that it holds the answers. */
export function changesOf(sheet: Sheet, worked: readonly Worked[], saving: Saving): readonly CellChange[] {
  const cells = onceAskedFor(() => cellsOf(sheet));
  const changes = new Map<number, CellChange>();
  const put = (old: SheetCell | undefined, { row, column }: Place, wanted: Wanted): void => {
    const key = placeKey(row, column);
    if (isSame(old, wanted)) changes.delete(key);
    else {
      // Written out: there are as many as there are cells.
      const { value, style } = wanted;
      changes.set(key, { row, column, old, value, style, formula: withMark(wanted.formula, old, saving) });
    }
  };
  const rowStyles = onceAskedFor(() => new Map(sheet.rows.map(({ row, style }) => [row, style])));
  for (const cell of emptied(worked, cells)) put(cell, cell, { value: null, style: cell.style, formula: undefined });
  const isWholeCall = askedOncePerPattern(isOneCall);
  for (const item of worked) {
    const { cell } = item;
    const { row, column, style } = cell;
    const { value, spill, shown } = item.answer;
    // Only where the whole formula is one FOOT call is the answer's format the function's own.
    const wanted = shown && item.traits.foot && !isCellError(value) && isWholeCall(item) ? shown : undefined;
    const styled = (at: number, index: number, line: number, content: Cell): number => {
      const format = wanted && typeof content === "number" ? formatFor(wanted, line, index, content) : undefined;
      return format === undefined ? at : saving.styleWith(at, format);
    };
    put(cell, cell, { value, style: styled(style, 0, 0, value), formula: formulaOf(item, saving) });
    spill?.cells.forEach((line, down) => {
      line.forEach((content, across) => {
        if (down === 0 && across === 0) return;
        const at = { row: row + down, column: column + across };
        const old = cells().get(placeKey(at.row, at.column));
        const base = old?.style ?? rowStyles().get(at.row) ?? columnStyle(sheet, at.column);
        put(old, at, { value: content, style: styled(base, across, down, content), formula: undefined });
      });
    });
  }
  giveOwnText(cells, changes);
  return [...changes.values()];
}

/** What is so of a formula in any row, asked of one of those that share a pattern. */
function askedOncePerPattern(ask: (formula: string) => boolean): (item: Worked) => boolean {
  const known = new Map<RowPattern, boolean>();
  return ({ cell, pattern }) => {
    const before = pattern && known.get(pattern);
    if (before !== undefined) return before;
    const answer = ask(cell.formula?.text ?? "");
    if (pattern) known.set(pattern, answer);
    return answer;
  };
}

type Wanted = Omit<CellChange, "row" | "column" | "old">;

/** The cells of a sheet by their places. */
export function cellsOf({ rows }: Sheet): ReadonlyMap<number, SheetCell> {
  const cells = new Map<number, SheetCell>();
  for (const row of rows) for (const cell of row.cells) cells.set(placeKey(cell.row, cell.column), cell);
  return cells;
}

/** Most sheets have no use for it, and it takes as long to make as everything else that is asked of a cell. */
function onceAskedFor<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

/** Writes formulas out that point to a shared one which the changes take away. */
export function giveOwnText(cells: () => ReadonlyMap<number, SheetCell>, changes: Map<number, CellChange>): void {
  for (const cell of orphaned(cells, changes)) {
    const { row, column, style, value, formula } = cell;
    const own = { text: storedSpelling(formula.text) };
    const key = placeKey(row, column);
    changes.set(key, { ...(changes.get(key) ?? { row, column, old: cell, value, style }), formula: own });
  }
}

type SharingCell = SheetCell & { readonly formula: StoredFormula };

/** Cells that only point to a shared formula which is now written another way: they need its text themselves. */
function orphaned(
  cells: () => ReadonlyMap<number, SheetCell>,
  changes: ReadonlyMap<number, CellChange>,
): readonly SharingCell[] {
  const gone = new Set<number>();
  for (const { old, formula } of changes.values()) {
    const stored = old?.formula;
    if (formula !== "keep" && stored?.leader === stored?.start && stored?.leader !== undefined) gone.add(stored.leader);
  }
  if (gone.size === 0) return [];
  const points = (cell: SheetCell): cell is SharingCell =>
    cell.formula?.leader !== undefined && gone.has(cell.formula.leader);
  return [...cells()].flatMap(([key, cell]) => {
    const change = changes.get(key);
    return points(cell) && (change === undefined || change.formula === "keep") ? [cell] : [];
  });
}

/** A dynamic array formula that stays the same still needs its mark written again. */
function withMark(
  formula: FormulaChange | undefined,
  old: SheetCell | undefined,
  { dynamicMark }: Saving,
): FormulaChange | undefined {
  if (formula !== "keep" || !old?.dynamic || !old.formula?.area) return formula;
  return { text: old.formula.text, array: { area: old.formula.area, mark: dynamicMark() } };
}

function isSame(old: SheetCell | undefined, { value, style, formula }: Wanted): boolean {
  if (!old) return value === null && formula === undefined;
  const sameFormula = formula === undefined ? old.formula === undefined : formula === "keep";
  return sameFormula && sameValue(old.value, value) && old.style === style;
}

/** Cells that an array formula filled when the file was saved; those it fills again are put back after. */
function emptied(worked: readonly Worked[], cells: () => ReadonlyMap<number, SheetCell>): readonly SheetCell[] {
  const found: SheetCell[] = [];
  for (const { cell } of worked) {
    const area = cell.formula?.kind === "array" ? cell.formula.area : undefined;
    if (!area || isOneCell(area)) continue;
    for (const other of inside(area, cells())) if (!other.formula) found.push(other);
  }
  return found;
}

function inside(area: Area, cells: ReadonlyMap<number, SheetCell>): SheetCell[] {
  const size = (area.bottom - area.top + 1) * (area.right - area.left + 1);
  if (size > cells.size) return [...cells.values()].filter((cell) => isInside(cell, area));
  const found: SheetCell[] = [];
  for (let row = area.top; row <= area.bottom; row += 1) {
    for (let column = area.left; column <= area.right; column += 1) {
      const cell = cells.get(placeKey(row, column));
      if (cell) found.push(cell);
    }
  }
  return found;
}

function formulaOf({ cell, traits, pattern, answer }: Worked, { dynamicMark }: Saving): FormulaChange {
  const { formula, dynamic, row, column } = cell;
  if (!formula) return "keep";
  const text = pattern ? pattern.stored(formula.text, row) : storedSpelling(formula.text);
  const area = answer.spill?.area ?? { top: row, left: column, bottom: row, right: column };
  const isArray = formula.kind === "array" && formula.area !== undefined;
  if (traits.foot || (isArray && dynamic) || (answer.spill && !isArray)) {
    const asStored = isArray && dynamic && text === formula.text && sameArea(formula.area, area);
    return asStored ? "keep" : { text, array: { area, mark: dynamicMark() } };
  }
  return text === formula.text || isArray ? "keep" : { text };
}

const sameArea = (one: Area | undefined, other: Area): boolean =>
  one !== undefined &&
  one.top === other.top &&
  one.left === other.left &&
  one.bottom === other.bottom &&
  one.right === other.right;

/** The number format for a line and column of an answer. */
function formatFor(
  { formats, headings }: NonNullable<EngineAnswer["shown"]>,
  line: number,
  index: number,
  value: Cell,
): string | undefined {
  if (headings && line === 0) return undefined;
  const format: Format | undefined = formats[Math.min(index, formats.length - 1)];
  const pattern = format === undefined ? undefined : patternFor(format, value);
  return pattern === "General" ? undefined : pattern;
}

/**
 * `FOOT.X(…)` and nothing around it: only then is the answer's format the function's own.
 *
 * @param formula - as typed or as stored, without `=`
 */
export function isOneCall(formula: string): boolean {
  const open = formula.indexOf("(");
  if (open === -1 || !formula.trimEnd().endsWith(")") || footName(formula.slice(0, open).trim()) === undefined)
    return false;
  let depth = 0;
  let quoted = "";
  for (let at = open; at < formula.length; at += 1) {
    const sign = formula[at] as string;
    if (quoted) {
      if (sign === quoted) quoted = "";
    } else if (sign === '"' || sign === "'") quoted = sign;
    else if (sign === "(") depth += 1;
    else if (sign === ")") depth -= 1;
    if (depth === 0) return formula.slice(at + 1).trim() === "";
  }
  return false;
}

const columnStyle = ({ columnStyles }: Sheet, column: number): number =>
  columnStyles.find(({ from, to }) => column >= from && column <= to)?.style ?? 0;
