import { type Area, isInside, isOneCell, overlap, type Place } from "./address.ts";
import { coneOf, type Reader } from "./coneOf.ts";
import { type Engine, type EngineAnswer, type EngineAnswers, type EngineCell, placeKey } from "./engine.ts";
import { CertainError, NotWorkedOut } from "./formula/notWorkedOut.ts";
import { NoFormula, parseFormula } from "./formula/parseFormula.ts";
import { readsOf } from "./formula/readsOf.ts";
import { referencesIn, type SheetArea } from "./formula/referencesIn.ts";
import { surroundingsOf } from "./formula/surroundingsOf.ts";
import { type Surroundings, type Translation, translate } from "./formula/translate.ts";
import { lastRow } from "./limits.ts";
import type { Sheet, SheetCell } from "./model.ts";
import type { Workbook } from "./workbook.ts";

/** A formula cell with what became of it. */
export interface Worked {
  readonly cell: SheetCell;
  readonly translation: Translation;
  readonly answer: EngineAnswer;
}

interface LeftAsSaved extends Place {
  readonly sheet: number;
  readonly reason: string;
}

export interface WorkedOut {
  /** By sheet, in the order of the workbook. */
  readonly sheets: readonly (readonly Worked[])[];
  readonly left: readonly LeftAsSaved[];
  /** Formulas that were not asked for: the spreadsheet's own answers stand. */
  readonly kept: number;
  readonly circular: boolean;
}

export interface WorkingOut {
  /** Every formula, not only those of FOOT, those without a value, and what hangs on them. */
  readonly all?: boolean;
}

/** One formula's part in the calculation. */
interface Task extends Reader {
  readonly cell: SheetCell;
  readonly key: number;
  /** As the engine reads it; undefined where it cannot be worked out. */
  readonly translation: Translation | undefined;
  /** Why it keeps its saved value. */
  readonly reason?: string;
  /** The error it ends in whatever the cells hold, in words. */
  readonly certain?: string;
}

// Each round works out the formulas that a list has grown into; more rounds than this no workbook needs.
const mostRounds = 4;

/**
 * Has the engine work out the formulas that need it: those that call FOOT, have no saved value or follow the clock, and
 * all that hang on them. The answers that the spreadsheet itself has saved for the others stand.
 */
export async function workOut(
  workbook: Workbook,
  engine: Engine,
  { all = false }: WorkingOut = {},
): Promise<WorkedOut> {
  const around = surroundingsOf(workbook, engine);
  const tasks = workbook.sheets.flatMap((sheet, place) => tasksOf(sheet, place, around));
  const seeds = new Set<number>();
  tasks.forEach((task, at) => {
    if (all || workbook.asksForAll || isSeed(task)) seeds.add(at);
  });
  for (let round = 0; ; round += 1) {
    const cone = coneOf(tasks, seeds);
    const answers = await engine.calculate(engineWorkbook(workbook, tasks, cone, around));
    const grown = round < mostRounds ? readersOfNewCells(tasks, cone, answers) : [];
    if (grown.length === 0) return outcome(workbook, tasks, cone, answers);
    for (const at of cone) seeds.add(at);
    for (const at of grown) seeds.add(at);
  }
}

/** Functions whose answer may be another though no cell has changed. */
const volatile: ReadonlySet<string> = new Set("NOW TODAY RAND RANDARRAY RANDBETWEEN OFFSET INDIRECT".split(" "));

const isSeed = ({ cell, translation, certain }: Task): boolean =>
  cell.unsaved === true ||
  cell.value === null ||
  certain !== undefined ||
  translation?.foot === true ||
  (translation?.calls.some((name) => volatile.has(name)) ?? false) ||
  (translation === undefined && /\bFOOT[._]/i.test(cell.formula?.text ?? ""));

// The engine walks a formula by calls within calls.
const mostSteps = 4000;

/** Signs, brackets and separators: at least as many as the formula has levels. */
const stepsIn = (formula: string): number => formula.match(/[-+*/^&=<>,;({%@]/g)?.length ?? 0;

// Half of a column of a sheet; each cell is written into the file.
const mostArrayCells = lastRow / 2;

const cellsIn = ({ top, left, bottom, right }: Area): number => (bottom - top + 1) * (right - left + 1);

function tasksOf(sheet: Sheet, place: number, around: Surroundings): Task[] {
  const inArea = cellsByArea(sheet);
  return sheet.rows.flatMap(({ cells }) =>
    cells.flatMap((cell): Task[] => {
      if (!cell.formula) return [];
      const { row, column } = cell;
      const filled = cell.formula.kind === "array" && cell.formula.area ? inArea(cell.formula.area) : [];
      const common = { cell, key: placeKey(row, column), sheet: place, cells: [{ row, column }, ...filled] };
      return [{ ...common, ...taskOf(cell, place, around) }];
    }),
  );
}

type TaskPart = Pick<Task, "translation" | "reads"> & Partial<Pick<Task, "reason" | "certain">>;

function taskOf(cell: SheetCell, place: number, around: Surroundings): TaskPart {
  const { formula } = cell;
  const text = formula?.text ?? "";
  const leave = (reason: string): TaskPart => ({
    translation: undefined,
    reason,
    reads: text.length > longestRead ? [] : referencesIn(`=${text}`, place, around.sheetByName),
  });
  if (formula?.kind === "data table") return leave("it belongs to a what-if data table");
  if (stepsIn(text) > mostSteps)
    return leave(`it has more than ${mostSteps} steps, which is more than can be followed`);
  if (formula?.kind === "array" && formula.area && cellsIn(formula.area) > mostArrayCells)
    return leave("its array covers more cells than can be worked out");
  try {
    const translation = translate(text, place, cell, around);
    const { areas } = readsOf(parseFormula(translation.formula, place, around.sheetByName));
    return { translation, reads: areas };
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
  const byRow = new Map(rows.map(({ row, cells }) => [row, cells]));
  return (area) => {
    if (isOneCell(area)) return [];
    const inside = (cells: readonly SheetCell[]) => cells.filter((cell) => !cell.formula && isInside(cell, area));
    if (area.bottom - area.top > byRow.size)
      return rows.flatMap(({ row, cells }) => (row >= area.top && row <= area.bottom ? inside(cells) : []));
    const found: SheetCell[] = [];
    for (let row = area.top; row <= area.bottom; row += 1) found.push(...inside(byRow.get(row) ?? []));
    return found;
  };
}

function engineWorkbook(
  workbook: Workbook,
  tasks: readonly Task[],
  cone: ReadonlySet<number>,
  around: Surroundings,
): Parameters<Engine["calculate"]>[0] {
  const bySheet = workbook.sheets.map((): Map<number, Task> => new Map());
  let looksUpNames = false;
  for (const at of cone) {
    const task = tasks[at] as Task;
    if (task.translation === undefined) continue;
    bySheet[task.sheet]?.set(task.key, task);
    looksUpNames ||= task.translation.calls.includes("INDIRECT");
  }
  return {
    dateSystem: workbook.dateSystem,
    names: looksUpNames ? plainNames(workbook, around) : [],
    sheets: workbook.sheets.map((sheet, place) => engineSheet(sheet, bySheet[place] as Map<number, Task>)),
  };
}

/** The names of the whole workbook, each as a formula the engine can read. */
function plainNames({ names }: Workbook, around: Surroundings): { name: string; formula: string }[] {
  return names.flatMap(({ name, text, sheet }) => {
    if (sheet !== undefined || name.startsWith("_xlnm.")) return [];
    try {
      return [{ name, formula: translate(text, 0, { row: 0, column: 0 }, around).formula.slice(1) }];
    } catch {
      // INDIRECT finds no such name then, and says #REF!.
      return [];
    }
  });
}

const subtotal = /\b(?:SUBTOTAL|AGGREGATE)\s*\(/i;

function engineSheet(sheet: Sheet, tasks: ReadonlyMap<number, Task>) {
  const filledBy = new Map<number, number>();
  for (const { cells, key } of tasks.values())
    for (const { row, column } of cells.slice(1)) filledBy.set(placeKey(row, column), key);
  const cells: EngineCell[] = [];
  const filled: (EngineCell & { readonly by: number })[] = [];
  const subtotals = new Set<number>();
  const hidden = new Set<number>();
  for (const row of sheet.rows) {
    if (row.hidden) hidden.add(row.row);
    for (const cell of row.cells) {
      const key = placeKey(cell.row, cell.column);
      if (cell.formula && subtotal.test(cell.formula.text)) subtotals.add(key);
      const task = tasks.get(key);
      const by = filledBy.get(key);
      if (task) cells.push(engineCell(task));
      else if (by !== undefined) filled.push({ row: cell.row, column: cell.column, value: cell.value, by });
      else if (cell.value !== null) cells.push({ row: cell.row, column: cell.column, value: cell.value });
    }
  }
  const { filters } = sheet;
  return {
    name: sheet.name,
    cells,
    filled,
    subtotals,
    hidden,
    filtered: new Set([...hidden].filter((row) => filters.some(({ top, bottom }) => row > top && row <= bottom))),
    reserved: [...sheet.merged, ...sheet.tables.map(({ area }) => area)],
  };
}

function engineCell({ cell, translation, certain }: Task): EngineCell {
  const { row, column, value, formula, dynamic } = cell;
  if (certain !== undefined || !translation) return { row, column, value: { error: "#NAME?" } };
  const common = { row, column, value, formula: translation.formula };
  const mayFill = translation.foot || translation.dynamic || dynamic;
  // Other programs save an answer of ours that has grown without the mark of one that grows; LibreOffice has none such.
  const mayHaveGrown = translation.foot && !translation.forCalc;
  if (formula?.kind === "array" && formula.area && !dynamic && !mayHaveGrown) return { ...common, fixed: formula.area };
  return mayFill || formula?.kind === "array" ? common : { ...common, single: true };
}

/** The engine's function that lays an array out over so many rows and columns. */
export const fitFunction = "SOUNDFOLD.FIT";

/** Formulas outside the cone that read cells which an answer fills now and did not before. */
function readersOfNewCells(
  tasks: readonly Task[],
  cone: ReadonlySet<number>,
  { sheets }: EngineAnswers,
): readonly number[] {
  const grown: SheetArea[] = [];
  for (const at of cone) {
    const { sheet, key, cell } = tasks[at] as Task;
    const area = sheets[sheet]?.get(key)?.spill?.area;
    const before = cell.formula?.kind === "array" ? cell.formula.area : undefined;
    if (area && !(before && area.bottom <= before.bottom && area.right <= before.right)) grown.push({ sheet, area });
  }
  if (grown.length === 0) return [];
  return tasks.flatMap(({ reads }, at) => {
    if (cone.has(at)) return [];
    const reads1 = reads.some((read) => grown.some((one) => one.sheet === read.sheet && overlap(one.area, read.area)));
    return reads1 ? [at] : [];
  });
}

function outcome(
  { sheets }: Workbook,
  tasks: readonly Task[],
  cone: ReadonlySet<number>,
  answers: EngineAnswers,
): WorkedOut {
  const worked: Worked[][] = sheets.map(() => []);
  const left: LeftAsSaved[] = [];
  tasks.forEach(({ cell, sheet, key, translation, reason, certain }, at) => {
    if (!cone.has(at)) return;
    const { row, column } = cell;
    const leave = (why: string): unknown => left.push({ sheet, row, column, reason: why });
    if (!translation) leave(reason ?? "");
    else if (certain !== undefined)
      worked[sheet]?.push({ cell, translation, answer: { value: { error: "#NAME?" }, message: certain } });
    else {
      const answer = answers.sheets[sheet]?.get(key);
      if (answer === undefined) leave("the engine gave no answer for it");
      else if (answer.left !== undefined) leave(answer.left);
      else worked[sheet]?.push({ cell, translation, answer });
    }
  });
  return { sheets: worked, left, kept: tasks.length - cone.size, circular: answers.circular };
}
