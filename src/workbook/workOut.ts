import { overlap, type Place } from "./address.ts";
import { coneOf } from "./coneOf.ts";
import type { Engine, EngineAnswer, EngineAnswers } from "./engine.ts";
import { engineWorkbook } from "./engineWorkbook.ts";
import type { SheetArea } from "./formula/referencesIn.ts";
import type { RowPattern } from "./formula/rowPattern.ts";
import { surroundingsOf } from "./formula/surroundingsOf.ts";
import type { FormulaTraits } from "./formula/translate.ts";
import type { SheetCell } from "./model.ts";
import { isSeed, type Task, tasksOf } from "./tasks.ts";
import type { Workbook } from "./workbook.ts";

/** A formula cell with what became of it. */
export interface Worked {
  readonly cell: SheetCell;
  readonly traits: FormulaTraits;
  /** The same for all formulas that are the same in other rows, where there are any. */
  readonly pattern?: RowPattern | undefined;
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
  const tasks = workbook.sheets.flatMap((sheet, index) => tasksOf(sheet, index, around));
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
  return tasks.flatMap((task, at) => {
    if (cone.has(at)) return [];
    const reads1 = task.reads.some((read) =>
      grown.some((one) => one.sheet === read.sheet && overlap(one.area, read.area)),
    );
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
  const leave = ({ cell: { row, column }, sheet }: Task, why: string): unknown =>
    left.push({ sheet, row, column, reason: why });
  tasks.forEach((task, at) => {
    if (!cone.has(at)) return;
    const { cell, sheet, key, read } = task;
    const { traits, pattern, reason, certain } = read;
    if (!traits) leave(task, reason ?? "");
    else if (certain !== undefined)
      worked[sheet]?.push({ cell, traits, answer: { value: { error: "#NAME?" }, message: certain } });
    else {
      const answer = answers.sheets[sheet]?.get(key);
      if (answer === undefined) leave(task, "the engine gave no answer for it");
      else if (answer.left !== undefined) leave(task, answer.left);
      else worked[sheet]?.push({ cell, traits, pattern, answer });
    }
  });
  return { sheets: worked, left, kept: tasks.length - cone.size, circular: answers.circular };
}
