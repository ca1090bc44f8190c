import { type Area, isInside, isOneCell } from "./address.ts";
import type { Reader } from "./coneOf.ts";
import { placeKey } from "./engine.ts";
import { FormulaTree } from "./formula/formulaTree.ts";
import { CertainError, NotWorkedOut } from "./formula/notWorkedOut.ts";
import { NoFormula, parseFormula } from "./formula/parseFormula.ts";
import { referencesIn, type SheetArea } from "./formula/referencesIn.ts";
import { RowPattern } from "./formula/rowPattern.ts";
import { type FormulaTraits, type Surroundings, translate } from "./formula/translate.ts";
import { lastRow } from "./limits.ts";
import type { Sheet, SheetCell, StoredFormula } from "./model.ts";

/** One formula's part in the calculation. */
export class Task implements Reader {
  readonly sheet: number;
  readonly cell: SheetCell;
  readonly key: number;
  readonly filled: readonly SheetCell[];
  readonly read: FormulaRead;

  constructor(sheet: number, cell: SheetCell, filled: readonly SheetCell[], read: FormulaRead) {
    this.sheet = sheet;
    this.cell = cell;
    this.key = placeKey(cell.row, cell.column);
    this.filled = filled;
    this.read = read;
  }

  get reads(): readonly SheetArea[] {
    const { formula, reads } = this.read;
    return reads ?? (formula as FormulaTree).readsIn(this.cell.row);
  }
}

/** A formula as it was read, which formulas that are the same in other rows share. */
interface FormulaRead {
  /** Undefined where it cannot be worked out. */
  readonly traits: FormulaTraits | undefined;
  /** As the engine is to read it. */
  readonly formula: string | FormulaTree;
  readonly pattern: RowPattern | undefined;
  /** The cells it reads, where no tree tells them. */
  readonly reads: readonly SheetArea[] | undefined;
  /** Why it keeps its saved value. */
  readonly reason?: string;
  /** The error it ends in whatever the cells hold, in words. */
  readonly certain?: string;
}

/** Functions whose answer may be another though no cell has changed. */
const volatile: ReadonlySet<string> = new Set("NOW TODAY RAND RANDARRAY RANDBETWEEN OFFSET INDIRECT".split(" "));

/** Whether a formula is worked out even when nothing it hangs on is. */
export const isSeed = ({ cell, read: { traits, certain } }: Task): boolean =>
  cell.unsaved === true ||
  cell.value === null ||
  certain !== undefined ||
  traits?.foot === true ||
  (traits?.calls.some((name) => volatile.has(name)) ?? false) ||
  (traits === undefined && /\bFOOT[._]/i.test(cell.formula?.text ?? ""));

// The engine walks a formula by calls within calls.
const mostSteps = 4000;

/** Signs, brackets and separators: at least as many as the formula has levels. */
const stepsIn = (formula: string): number =>
  // Most are shorter than that, and there are as many as a sheet has cells.
  formula.length <= mostSteps ? 0 : (formula.match(/[-+*/^&=<>,;({%@]/g)?.length ?? 0);

// Half of a column of a sheet; each cell is written into the file.
const mostArrayCells = lastRow / 2;

const cellsIn = ({ top, left, bottom, right }: Area): number => (bottom - top + 1) * (right - left + 1);

/** What each formula of a sheet reads, and how the engine is to read it. */
export function tasksOf(sheet: Sheet, index: number, around: Surroundings): Task[] {
  const inArea = cellsByArea(sheet);
  const readFormula = readingDown(index, around);
  const tasks: Task[] = [];
  for (const { cells } of sheet.rows) {
    for (const cell of cells) {
      const { formula } = cell;
      if (!formula) continue;
      const filled = formula.kind === "array" && formula.area ? inArea(formula.area) : none;
      tasks.push(new Task(index, cell, filled, readFormula(cell, formula)));
    }
  }
  return tasks;
}

const none: readonly SheetCell[] = [];

/** The formula that was read last in a column, to be known again below. */
interface Above {
  readonly text: string;
  readonly row: number;
  readonly traits: FormulaTraits;
  readonly tree: FormulaTree;
  /** What those that fit it share; null where none can. Worked out when there is a formula below it. */
  shared: (FormulaRead & { readonly pattern: RowPattern }) | null | undefined;
}

/** Reads the formulas of a sheet, each as the one above it in its column where it is the same. */
function readingDown(index: number, around: Surroundings): (cell: SheetCell, formula: StoredFormula) => FormulaRead {
  const byColumn = new Map<number, Above>();
  const isDefined = (word: string): boolean => around.names.has(word) || around.tables.has(word);
  const sharedBy = ({ text, row, traits, tree }: Above): Above["shared"] => {
    const pattern = RowPattern.of(text, row, isDefined);
    return pattern ? { traits, formula: tree, pattern, reads: undefined } : null;
  };
  return (cell, formula) => {
    const { text } = formula;
    const leave = (reason: string): FormulaRead => ({
      traits: undefined,
      formula: "",
      pattern: undefined,
      reason,
      reads: text.length > longestRead ? [] : referencesIn(`=${text}`, index, around.sheetByName),
    });
    const reason = whyLeft(formula);
    if (reason !== undefined) return leave(reason);
    const above = byColumn.get(cell.column);
    if (above) {
      if (above.shared === undefined) above.shared = sharedBy(above);
      if (above.shared?.pattern.fits(text, cell.row)) return above.shared;
    }
    try {
      const { formula: translated, traits } = translate(text, index, cell, around);
      const tree = new FormulaTree(parseFormula(translated, index, around.sheetByName), cell.row);
      if (text.length <= mostSteps) byColumn.set(cell.column, { text, row: cell.row, traits, tree, shared: undefined });
      // Those that call FOOT or have no value are worked out for certain; of a sheet full of others few may be.
      return traits.foot || cell.unsaved
        ? { traits, formula: tree, pattern: undefined, reads: undefined }
        : { traits, formula: translated, pattern: undefined, reads: tree.readsIn(cell.row) };
    } catch (error) {
      if (error instanceof NotWorkedOut || error instanceof NoFormula) return leave(error.message);
      if (!(error instanceof CertainError)) throw error;
      const traits = { calls: [], foot: false, forCalc: false, dynamic: false };
      return { traits, formula: "", pattern: undefined, certain: error.message, reads: [] };
    }
  };
}

/** Why a formula keeps its saved value, whatever it says. */
function whyLeft({ text, kind, area }: StoredFormula): string | undefined {
  if (kind === "data table") return "it belongs to a what-if data table";
  if (stepsIn(text) > mostSteps) return `it has more than ${mostSteps} steps, which is more than can be followed`;
  if (kind === "array" && area && cellsIn(area) > mostArrayCells)
    return "its array covers more cells than can be worked out";
  return undefined;
}

const longestRead = 100_000;

/** The cells without a formula of their own inside an area, to be found by area. */
function cellsByArea({ rows }: Sheet): (area: Area) => readonly SheetCell[] {
  let byRow: ReadonlyMap<number, readonly SheetCell[]> | undefined;
  return (area) => {
    if (isOneCell(area)) return [];
    byRow ??= new Map(rows.map(({ row, cells }) => [row, cells]));
    const inside = (cells: readonly SheetCell[]) => cells.filter((cell) => !cell.formula && isInside(cell, area));
    if (area.bottom - area.top > byRow.size)
      return rows.flatMap(({ row, cells }) => (row >= area.top && row <= area.bottom ? inside(cells) : []));
    const found: SheetCell[] = [];
    for (let row = area.top; row <= area.bottom; row += 1) found.push(...inside(byRow.get(row) ?? []));
    return found;
  };
}
