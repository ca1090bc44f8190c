import { type Area, isInside, isOneCell } from "./address.ts";
import type { Reader } from "./coneOf.ts";
import { placeKey } from "./engine.ts";
import { CertainError, NotWorkedOut } from "./formula/notWorkedOut.ts";
import { type FormulaNode, NoFormula, parseFormula } from "./formula/parseFormula.ts";
import { readsOf } from "./formula/readsOf.ts";
import { referencesIn } from "./formula/referencesIn.ts";
import { type Surroundings, type Translation, translate } from "./formula/translate.ts";
import { lastRow } from "./limits.ts";
import type { Sheet, SheetCell } from "./model.ts";

/** One formula's part in the calculation. */
export interface Task extends Reader {
  readonly cell: SheetCell;
  readonly key: number;
  /** As the engine reads it; undefined where it cannot be worked out. */
  readonly translation: Translation | undefined;
  /** Its tree, where it is worked out for certain. */
  readonly parsed: FormulaNode | undefined;
  /** Why it keeps its saved value. */
  readonly reason: string | undefined;
  /** The error it ends in whatever the cells hold, in words. */
  readonly certain: string | undefined;
}

/** Functions whose answer may be another though no cell has changed. */
const volatile: ReadonlySet<string> = new Set("NOW TODAY RAND RANDARRAY RANDBETWEEN OFFSET INDIRECT".split(" "));

/** Whether a formula is worked out even when nothing it hangs on is. */
export const isSeed = ({ cell, translation, certain }: Task): boolean =>
  cell.unsaved === true ||
  cell.value === null ||
  certain !== undefined ||
  translation?.foot === true ||
  (translation?.calls.some((name) => volatile.has(name)) ?? false) ||
  (translation === undefined && /\bFOOT[._]/i.test(cell.formula?.text ?? ""));

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
  const tasks: Task[] = [];
  for (const { cells } of sheet.rows) {
    for (const cell of cells) {
      const { row, column, formula } = cell;
      if (!formula) continue;
      const filled = formula.kind === "array" && formula.area ? inArea(formula.area) : [];
      const { translation, parsed, reads, reason, certain } = readOf(cell, index, around);
      const key = placeKey(row, column);
      const cells = filled.length === 0 ? [cell] : [cell, ...filled];
      // Written out: to spread one object into another takes as long as reading the formula.
      tasks.push({ cell, key, sheet: index, cells, translation, parsed, reads, reason, certain });
    }
  }
  return tasks;
}

type FormulaRead = Pick<Task, "translation" | "reads"> & Partial<Pick<Task, "parsed" | "reason" | "certain">>;

function readOf(cell: SheetCell, index: number, around: Surroundings): FormulaRead {
  const { formula } = cell;
  const text = formula?.text ?? "";
  const leave = (reason: string): FormulaRead => ({
    translation: undefined,
    reason,
    reads: text.length > longestRead ? [] : referencesIn(`=${text}`, index, around.sheetByName),
  });
  if (formula?.kind === "data table") return leave("it belongs to a what-if data table");
  if (stepsIn(text) > mostSteps)
    return leave(`it has more than ${mostSteps} steps, which is more than can be followed`);
  if (formula?.kind === "array" && formula.area && cellsIn(formula.area) > mostArrayCells)
    return leave("its array covers more cells than can be worked out");
  try {
    const translation = translate(text, index, cell, around);
    const parsed = parseFormula(translation.formula, index, around.sheetByName);
    const { areas: reads } = readsOf(parsed);
    // Those that call FOOT or have no value are worked out for certain; of a sheet full of others few may be.
    return translation.foot || cell.unsaved ? { translation, parsed, reads } : { translation, reads };
  } catch (error) {
    if (error instanceof NotWorkedOut || error instanceof NoFormula) return leave(error.message);
    if (!(error instanceof CertainError)) throw error;
    return {
      translation: { formula: "", calls: [], foot: false, forCalc: false, dynamic: false },
      certain: error.message,
      reads: [],
    };
  }
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
