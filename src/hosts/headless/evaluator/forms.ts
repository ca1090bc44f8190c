import { type Cell, isCellError } from "../../../cells/cell.ts";
import type { FormulaNode } from "../../../workbook/formula/parseFormula.ts";
import type { Calling, Form } from "./evaluateFormula.ts";
import { compareCells } from "./operators.ts";
import {
  cellIn,
  errorOf,
  firstOf,
  type Grid,
  gridOr,
  isGrid,
  isLambda,
  isReference,
  type Lambda,
  lift,
  liftAnew,
  linesFrom,
  type Value,
} from "./values.ts";

type Given = readonly (FormulaNode | undefined)[];

/** What a cell says where TRUE or FALSE is wanted. */
export function truthOf(cell: Cell): boolean | ReturnType<typeof errorOf> {
  if (isCellError(cell)) return cell;
  if (typeof cell === "boolean") return cell;
  if (typeof cell === "string") {
    if (/^true$/i.test(cell)) return true;
    return /^false$/i.test(cell) ? false : errorOf("#VALUE!");
  }
  return cell !== null && cell !== 0;
}

const argument = (given: Given, index: number, calling: Calling): Value => calling.evaluate(given[index]);

/** Picks, for each cell of an array of choices, from the value that belongs to it; each is worked out once. */
function pickEach(choices: Grid, values: (index: number) => Value, calling: Calling): Value {
  const contents = new Map<number, Cell | Grid>();
  for (const line of new Set(choices.grid)) {
    for (const choice of line)
      if (typeof choice === "number" && !contents.has(choice)) contents.set(choice, calling.content(values(choice)));
  }
  const grids = [choices.grid];
  const gridOf = new Map<number, number>();
  for (const [choice, content] of contents) {
    if (!isGrid(content)) continue;
    gridOf.set(choice, grids.length);
    grids.push(content.grid);
  }
  const columns = Math.max(...grids.map((grid) => grid[0]?.length ?? 0));
  calling.store.spend(Math.max(...grids.map(({ length }) => length)) * columns);
  return gridOr(
    linesFrom(grids, (lines) => {
      const out = new Array<Cell>(columns);
      for (let column = 0; column < columns; column += 1) {
        const choice = cellIn(lines[0] ?? [], column);
        const from = typeof choice === "number" ? lines[gridOf.get(choice) ?? -1] : undefined;
        if (from) out[column] = cellIn(from, column);
        else out[column] = typeof choice === "number" ? ((contents.get(choice) as Cell | undefined) ?? null) : choice;
      }
      return out;
    }),
  );
}

function ifForm(given: Given, calling: Calling): Value {
  if (given.length < 2 || given.length > 3) return errorOf("#VALUE!");
  const test = calling.content(argument(given, 0, calling));
  const branch = (yes: boolean): Value => {
    if (!yes && given.length === 2) return false;
    // A branch left out between commas is 0.
    return given[yes ? 1 : 2] === undefined ? 0 : argument(given, yes ? 1 : 2, calling);
  };
  if (isGrid(test)) {
    const choices = lift([test], (cell) => {
      const truth = truthOf(cell);
      return typeof truth === "boolean" ? (truth ? 1 : 0) : truth;
    }) as Grid;
    return pickEach(choices, (index) => branch(index === 1), calling);
  }
  const truth = truthOf(test);
  return typeof truth === "boolean" ? branch(truth) : truth;
}

const insteadOf =
  (isTrouble: (cell: Cell) => boolean): Form =>
  (given, calling) => {
    const value = argument(given, 0, calling);
    const content = calling.content(value);
    if (!isGrid(content)) {
      if (isTrouble(content)) return given[1] === undefined ? 0 : argument(given, 1, calling);
      return content;
    }
    const other = calling.content(given[1] === undefined ? 0 : argument(given, 1, calling));
    return lift([content, other], (cell, instead) => (isTrouble(cell) ? instead : cell));
  };

const isNotThere = (cell: Cell): boolean => isCellError(cell) && cell.error === "#N/A";

function ifsForm(given: Given, calling: Calling): Value {
  const rest = (from: number): Value => {
    if (from >= given.length) return errorOf("#N/A");
    const test = calling.content(argument(given, from, calling));
    if (isGrid(test)) {
      const choices = lift([test], (cell) => {
        const truth = truthOf(cell);
        return typeof truth === "boolean" ? (truth ? 1 : 0) : truth;
      }) as Grid;
      return pickEach(choices, (yes) => (yes === 1 ? argument(given, from + 1, calling) : rest(from + 2)), calling);
    }
    const truth = truthOf(test);
    if (typeof truth !== "boolean") return truth;
    return truth ? argument(given, from + 1, calling) : rest(from + 2);
  };
  return given.length % 2 === 0 ? rest(0) : errorOf("#N/A");
}

function switchForm(given: Given, calling: Calling): Value {
  const subject = calling.content(argument(given, 0, calling));
  const pick = (cell: Cell): Value => {
    if (isCellError(cell)) return cell;
    for (let index = 1; index + 1 < given.length; index += 2) {
      const candidate = calling.content(argument(given, index, calling));
      if (isGrid(candidate)) return errorOf("#VALUE!");
      if (isCellError(candidate)) return candidate;
      if (compareCells(cell, candidate) === 0) return argument(given, index + 1, calling);
    }
    return given.length % 2 === 0 ? argument(given, given.length - 1, calling) : errorOf("#N/A");
  };
  if (!isGrid(subject)) return pick(subject);
  return liftAnew([subject], (cell) => firstOf(calling.content(pick(cell))));
}

function chooseForm(given: Given, calling: Calling): Value {
  const place = calling.content(argument(given, 0, calling));
  const number = (cell: Cell): Cell => {
    if (isCellError(cell)) return cell;
    const value = typeof cell === "string" ? calling.toNumber(cell) : Number(cell ?? 0);
    const whole = value === undefined ? Number.NaN : Math.trunc(value);
    return whole >= 1 && whole < given.length ? whole : errorOf("#VALUE!");
  };
  if (isGrid(place)) {
    return pickEach(lift([place], number) as Grid, (at) => argument(given, at, calling), calling);
  }
  const chosen = number(place);
  return typeof chosen === "number" ? argument(given, chosen, calling) : chosen;
}

const nameOf = (node: FormulaNode | undefined): string | undefined => (node?.kind === "name" ? node.name : undefined);

function letForm(given: Given, calling: Calling): Value {
  if (given.length < 3 || given.length % 2 === 0) return errorOf("#VALUE!");
  const scope = new Map(calling.scope);
  for (let index = 0; index + 1 < given.length; index += 2) {
    const name = nameOf(given[index]);
    if (name === undefined) return errorOf("#NAME?");
    scope.set(name, calling.evaluate(given[index + 1], scope));
  }
  return calling.evaluate(given.at(-1), scope);
}

function lambdaForm(given: Given, calling: Calling): Value {
  const parameters = given.slice(0, -1).map(nameOf);
  const body = given.at(-1);
  if (body === undefined || parameters.includes(undefined)) return errorOf("#VALUE!");
  return { parameters: parameters as string[], body, scope: calling.scope };
}

const cellsOf = (value: Cell | Grid): readonly (readonly Cell[])[] => (isGrid(value) ? value.grid : [[value]]);
const oneCell = (value: Value, calling: Calling): Cell => {
  const content = calling.content(value);
  return isGrid(content) ? errorOf("#CALC!") : content;
};

/** The last argument as a function; the others worked out. */
function withLambda(
  given: Given,
  calling: Calling,
  compute: (lambda: Lambda, values: readonly Value[]) => Value,
): Value {
  const lambda = calling.evaluate(given.at(-1));
  if (!isLambda(lambda)) return errorOf("#VALUE!");
  return compute(
    lambda,
    given.slice(0, -1).map((node) => calling.evaluate(node)),
  );
}

const mapForm: Form = (given, calling) =>
  withLambda(given, calling, (lambda, values) =>
    liftAnew(
      values.map((value) => calling.content(value)),
      (...cells) => oneCell(calling.apply(lambda, cells), calling),
    ),
  );

const byForm =
  (columns: boolean): Form =>
  (given, calling) =>
    withLambda(given, calling, (lambda, [value = null]) => {
      const grid = cellsOf(calling.content(value));
      const line = (cells: readonly Cell[][]): Cell => oneCell(calling.apply(lambda, [gridOr(cells)]), calling);
      if (!columns) return gridOr(grid.map((row) => [line([[...row]])]));
      return gridOr([(grid[0] ?? []).map((_, index) => line(grid.map((row) => [row[index] ?? null])))]);
    });

const foldForm =
  (all: boolean): Form =>
  (given, calling) =>
    withLambda(given, calling, (lambda, values) => {
      let held: Value = values.length > 1 ? (values[0] ?? null) : null;
      const grid = cellsOf(calling.content(values.at(-1)));
      const steps = grid.map((row) =>
        row.map((cell) => {
          held = calling.apply(lambda, [held, cell]);
          return all ? oneCell(held, calling) : null;
        }),
      );
      return all ? gridOr(steps) : held;
    });

const makeArrayForm: Form = (given, calling) =>
  withLambda(given, calling, (lambda, values) => {
    const [rows, columns] = values.map((value) => Number(oneCell(value, calling)));
    if (!rows || !columns || rows < 1 || columns < 1) return errorOf("#VALUE!");
    calling.store.spend(rows * columns);
    return gridOr(
      Array.from({ length: Math.trunc(rows) }, (_, row) =>
        Array.from({ length: Math.trunc(columns) }, (__, column) =>
          oneCell(calling.apply(lambda, [row + 1, column + 1]), calling),
        ),
      ),
    );
  });

const isRefForm: Form = (given, calling) => isReference(argument(given, 0, calling));

/** Functions that work out only those of their arguments that they need, or name things. */
export const forms: ReadonlyMap<string, Form> = new Map<string, Form>([
  ["IF", ifForm],
  ["IFERROR", insteadOf(isCellError)],
  ["IFNA", insteadOf(isNotThere)],
  ["IFS", ifsForm],
  ["SWITCH", switchForm],
  ["CHOOSE", chooseForm],
  ["LET", letForm],
  ["LAMBDA", lambdaForm],
  ["MAP", mapForm],
  ["BYROW", byForm(false)],
  ["BYCOL", byForm(true)],
  ["REDUCE", foldForm(false)],
  ["SCAN", foldForm(true)],
  ["MAKEARRAY", makeArrayForm],
  ["ISREF", isRefForm],
]);
