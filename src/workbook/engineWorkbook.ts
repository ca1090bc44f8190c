import { type Engine, type EngineCell, placeKey } from "./engine.ts";
import { type Surroundings, translate } from "./formula/translate.ts";
import type { Sheet } from "./model.ts";
import type { Task } from "./tasks.ts";
import type { Workbook } from "./workbook.ts";

/** The workbook as the engine works it out: the formulas that are asked for, and the saved values of all other cells. */
export function engineWorkbook(
  workbook: Workbook,
  tasks: readonly Task[],
  cone: ReadonlySet<number>,
  around: Surroundings,
): Parameters<Engine["calculate"]>[0] {
  const bySheet = workbook.sheets.map((): Task[] => []);
  let looksUpNames = false;
  tasks.forEach((task, at) => {
    const { traits } = task.read;
    if (traits === undefined || !cone.has(at)) return;
    bySheet[task.sheet]?.push(task);
    looksUpNames ||= traits.calls.includes("INDIRECT");
  });
  return {
    dateSystem: workbook.dateSystem,
    names: looksUpNames ? plainNames(workbook, around) : [],
    sheets: workbook.sheets.map((sheet, index) => engineSheet(sheet, bySheet[index] as Task[])),
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

/** @param tasks - those of the sheet, in the order of its cells */
function engineSheet(sheet: Sheet, tasks: readonly Task[]) {
  const filledBy = new Map<number, number>();
  for (const { filled, key } of tasks) for (const { row, column } of filled) filledBy.set(placeKey(row, column), key);
  const cells: EngineCell[] = [];
  let next = 0;
  const filled: (EngineCell & { readonly by: number })[] = [];
  const subtotals = new Set<number>();
  const hidden = new Set<number>();
  for (const row of sheet.rows) {
    if (row.hidden) hidden.add(row.row);
    for (const cell of row.cells) {
      if (cell.formula && subtotal.test(cell.formula.text)) subtotals.add(placeKey(cell.row, cell.column));
      const by = filledBy.size === 0 ? undefined : filledBy.get(placeKey(cell.row, cell.column));
      const task = tasks[next];
      if (task?.cell === cell) {
        cells.push(engineCell(task));
        next += 1;
      } else if (by !== undefined) filled.push({ row: cell.row, column: cell.column, value: cell.value, by });
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

function engineCell({ cell, read: { traits, formula: asRead, certain } }: Task): EngineCell {
  const { row, column, value, formula, dynamic } = cell;
  if (certain !== undefined || !traits) return { row, column, value: { error: "#NAME?" } };
  const mayFill = traits.foot || traits.dynamic || dynamic;
  // Other programs save an answer of ours that has grown without the mark of one that grows; LibreOffice has none such.
  const mayHaveGrown = traits.foot && !traits.forCalc;
  if (formula?.kind === "array" && formula.area && !dynamic && !mayHaveGrown)
    return { row, column, value, formula: asRead, single: false, fixed: formula.area };
  const single = !mayFill && formula?.kind !== "array";
  return { row, column, value, formula: asRead, single, fixed: undefined };
}
