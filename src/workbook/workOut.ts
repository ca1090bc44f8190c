import type { Cell } from "../cells/cell.ts";
import { type Area, isInside, isOneCell, overlap, type Place } from "./address.ts";
import { type Engine, type EngineAnswer, type EngineAnswers, type EngineCell, placeKey } from "./engine.ts";
import { CertainError, NotWorkedOut } from "./formula/notWorkedOut.ts";
import { surroundingsOf } from "./formula/surroundingsOf.ts";
import { type Surroundings, type Translation, translate } from "./formula/translate.ts";
import { lastRow } from "./limits.ts";
import type { Sheet, SheetCell } from "./model.ts";
import { orderKey, spillOrder } from "./spillOrder.ts";
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
  readonly circular: boolean;
}

/** One cell's part in the calculation. */
interface Task {
  readonly cell: SheetCell;
  readonly translation: Translation;
  /** What it is held at when it cannot be left to the engine. */
  held?: { readonly value: Cell; readonly message?: string; readonly reason?: string };
  /** References to formulas that must be worked out before it, beyond those it names. */
  after?: readonly string[];
}

// Each round settles the formulas that may not fill the cells they want; more rounds than this no sheet needs.
const mostRounds = 8;

/** Has the engine work out every formula of the workbook. */
export async function workOut(workbook: Workbook, engine: Engine): Promise<WorkedOut> {
  const around = surroundingsOf(workbook, engine);
  const left: LeftAsSaved[] = [];
  const tasks = workbook.sheets.map((sheet, place) => tasksOf(sheet, place, around, left));
  let answers = await engine.calculate(engineWorkbook(workbook, tasks, around));
  for (let round = 0; round < mostRounds; round += 1) {
    const held = holdWhatMayNotSpill(workbook, tasks, answers);
    const ordered = putInOrder(workbook, tasks, answers);
    if (!held && !ordered) break;
    answers = await engine.calculate(engineWorkbook(workbook, tasks, around));
  }
  const sheets = tasks.map((list, sheet) => [...list.values()].flatMap((task) => worked(task, sheet, answers, left)));
  return { sheets, left, circular: answers.circular };
}

type Tasks = Map<number, Task>;

// The engine walks a formula by calls within calls; measured, it runs out of them between 1,000 and 4,000 steps.
const mostSteps = 1000;

/** Signs, brackets and separators: at least as many as the formula has levels. */
const stepsIn = (formula: string): number => formula.match(/[-+*/^&=<>,;(]/g)?.length ?? 0;

// Two whole columns of a sheet. An array over all of a sheet would ask for 17 thousand million cells.
const mostArrayCells = 2 * lastRow;

const cellsIn = ({ top, left, bottom, right }: Area): number => (bottom - top + 1) * (right - left + 1);

function tasksOf(sheet: Sheet, place: number, around: Surroundings, left: LeftAsSaved[]): Tasks {
  const tasks: Tasks = new Map();
  for (const { cells } of sheet.rows) {
    for (const cell of cells) {
      if (!cell.formula) continue;
      const { row, column, formula } = cell;
      const leave = (reason: string): unknown => left.push({ sheet: place, row, column, reason });
      if (formula.kind === "data table") {
        leave("it belongs to a what-if data table");
        continue;
      }
      if (stepsIn(formula.text) > mostSteps) {
        leave(`it has more than ${mostSteps} steps, which is more than can be followed`);
        continue;
      }
      if (formula.kind === "array" && formula.area && cellsIn(formula.area) > mostArrayCells) {
        leave("its array covers more cells than can be worked out");
        continue;
      }
      try {
        tasks.set(placeKey(row, column), { cell, translation: translate(formula.text, place, cell, around) });
      } catch (error) {
        if (error instanceof NotWorkedOut) leave(error.message);
        else if (error instanceof CertainError) {
          const translation = { formula: "", calls: [], foot: false, dynamic: false };
          tasks.set(placeKey(row, column), {
            cell,
            translation,
            held: { value: { error: "#NAME?" }, message: error.message },
          });
        } else throw error;
      }
    }
  }
  return tasks;
}

function engineWorkbook(workbook: Workbook, tasks: readonly Tasks[], around: Surroundings) {
  const looksUpNames = tasks.some((list) =>
    [...list.values()].some(({ translation }) => translation.calls.includes("INDIRECT")),
  );
  return {
    dateSystem: workbook.dateSystem,
    names: looksUpNames ? plainNames(workbook, around) : [],
    sheets: workbook.sheets.map((sheet, place) => ({
      name: sheet.name,
      cells: engineCells(sheet, tasks[place] as Tasks),
    })),
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

function engineCells(sheet: Sheet, tasks: Tasks): readonly EngineCell[] {
  const filled = filledByRow(sheet, tasks);
  return sheet.rows.flatMap(({ cells }) =>
    cells.flatMap((cell): EngineCell[] => {
      const { row, column, value } = cell;
      const task = tasks.get(placeKey(row, column));
      if (task) return [engineCell(task)];
      if (filled.get(row)?.some((area) => isInside(cell, area))) return [];
      return value === null ? [] : [{ row, column, value }];
    }),
  );
}

/** Areas whose cells hold nothing of their own, since an array formula fills them; by row, to be found fast. */
function filledByRow({ rows }: Sheet, tasks: Tasks): ReadonlyMap<number, readonly Area[]> {
  const filled = new Map<number, Area[]>(rows.map(({ row }) => [row, []]));
  for (const { cell } of tasks.values()) {
    const area = cell.formula?.kind === "array" ? cell.formula.area : undefined;
    if (!area || isOneCell(area)) continue;
    if (area.bottom - area.top > filled.size) {
      for (const [row, areas] of filled) if (row >= area.top && row <= area.bottom) areas.push(area);
    } else {
      for (let row = area.top; row <= area.bottom; row += 1) filled.get(row)?.push(area);
    }
  }
  return filled;
}

function engineCell({ cell, translation, held, after }: Task): EngineCell {
  const { row, column } = cell;
  if (held) return { row, column, value: held.value };
  const formula = fixedArray(cell, translation) ?? translation.formula;
  if (!after) return { row, column, value: null, formula };
  return { row, column, value: null, formula: `=${afterFunction}(${formula.slice(1)},${after.join(",")})` };
}

/** @returns whether the order has changed, so that everything must be worked out again */
function putInOrder(workbook: Workbook, tasks: readonly Tasks[], answers: EngineAnswers): boolean {
  const formulas = tasks.flatMap((list, sheet) =>
    [...list].flatMap(([key, { held, translation }]) => (held ? [] : [{ sheet, key, formula: translation.formula }])),
  );
  const sheetNames = workbook.sheets.map(({ name }) => name);
  const order = spillOrder(formulas, answers, sheetNames);
  let changed = false;
  for (const [sheet, list] of tasks.entries()) {
    for (const [key, task] of list) {
      const cells = order.get(orderKey(sheet, key));
      if (task.after?.join() === cells?.join()) continue;
      // Once in order a formula stays so: what it reads may have spilled less this time because of a wrong value.
      task.after = [...new Set([...(task.after ?? []), ...(cells ?? [])])];
      changed ||= cells !== undefined;
    }
  }
  return changed;
}

/** The engine's function that gives its first argument, once the cells in the others are worked out. */
export const afterFunction = "SOUNDFOLD.AFTER";

/** An array formula of the old kind fills exactly the cells it was entered in. */
function fixedArray({ formula, dynamic }: SheetCell, translation: Translation): string | undefined {
  if (formula?.kind !== "array" || !formula.area || dynamic || translation.foot) return undefined;
  const { top, left, bottom, right } = formula.area;
  return `=${fitFunction}(${translation.formula.slice(1)},${bottom - top + 1},${right - left + 1})`;
}

/** The engine's function that lays an array out over so many rows and columns. */
export const fitFunction = "SOUNDFOLD.FIT";

/** @returns whether anything had to be held, so that what depends on it must be worked out again */
function holdWhatMayNotSpill(workbook: Workbook, tasks: readonly Tasks[], answers: EngineAnswers): boolean {
  let changed = false;
  workbook.sheets.forEach(({ merged, tables }, place) => {
    const reserved = [...merged, ...tables.map(({ area }) => area)];
    for (const [key, task] of tasks[place] as Tasks) {
      const spill = answers.sheets[place]?.get(key)?.spill;
      if (!spill || task.held) continue;
      const held = holdFor(task, spill.area, reserved);
      if (!held) continue;
      task.held = held;
      changed = true;
    }
  });
  return changed;
}

function holdFor({ cell, translation }: Task, area: Area, reserved: readonly Area[]): Task["held"] | undefined {
  const { formula, dynamic, value } = cell;
  const mayFill = translation.foot || translation.dynamic || dynamic;
  if (formula?.kind !== "array" && !mayFill) {
    return { value, reason: "it gives more than one cell, yet is stored as a formula for one cell" };
  }
  if (formula?.kind === "array" && !mayFill) return undefined;
  if (!reserved.some((other) => overlap(area, other))) return undefined;
  return { value: { error: "#SPILL!" }, message: "the answer needs cells that belong to a table or to merged cells" };
}

function worked(
  { cell, translation, held }: Task,
  sheet: number,
  answers: EngineAnswers,
  left: LeftAsSaved[],
): Worked[] {
  const { row, column } = cell;
  if (held?.reason !== undefined) {
    left.push({ sheet, row, column, reason: held.reason });
    return [];
  }
  if (held) {
    const message = held.message === undefined ? {} : { message: held.message };
    return [{ cell, translation, answer: { value: held.value, ...message } }];
  }
  const answer = answers.sheets[sheet]?.get(placeKey(row, column));
  if (answer === undefined) {
    left.push({ sheet, row, column, reason: "the engine gave no answer for it" });
    return [];
  }
  return [{ cell, translation, answer }];
}
