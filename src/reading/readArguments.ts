import type { Cell, Cells } from "../cells/cell.ts";
import { Doubt } from "../cells/doubt.ts";
import type { Fault } from "../cells/fault.ts";
import { Problem } from "../cells/problem.ts";
import { type CellKind, type ReadOptions, Refusal } from "./kind.ts";
import { type LeftOut, leaveOut, type RowFault } from "./leaveOut.ts";
import type { Parameter, Parameters } from "./parameter.ts";

/** What a spreadsheet hands over for one argument: a cell, a range, or nothing when it was left out. */
export type Argument = Cell | Cells | undefined;

/** Where the rows of a group of columns stood in the range the user gave. */
export interface Layout {
  /** 1-based row of each record, blank rows left out. */
  readonly rows: Uint32Array;
  /** Height of the range, up to the last filled row of any column of the group. */
  readonly height: number;
  /** The range lies in one row, so that a result alongside it does too. */
  readonly lying: boolean;
  /** A single cell: messages then name no row. */
  readonly single: boolean;
}

export interface ReadArguments {
  readonly values: Readonly<Record<string, unknown>>;
  readonly layouts: ReadonlyMap<string, Layout>;
  /** The rows that were left out since a cell of theirs cannot be read or does not fit; undefined when there are none. */
  readonly leftOut: LeftOut | undefined;
}

/**
 * Turns what the spreadsheet hands over into checked values.
 *
 * @param parameters - by name, in the order of the formula
 * @param given - one entry an argument; fewer when trailing arguments were left out
 * @param rowFault - what is wrong with a row whose cells can each be read, where such rows are left out
 * @throws Problem naming argument and row
 */
export function readArguments(
  parameters: Parameters,
  given: readonly Argument[],
  options: ReadOptions,
  rowFault?: RowFault,
): ReadArguments {
  const names = Object.keys(parameters);
  if (given.length > names.length) throw new Problem(tooMany(given.length, names));
  const values: Record<string, unknown> = {};
  const groups = new Map<string, ColumnToRead[]>();

  names.forEach((name, index) => {
    const parameter = parameters[name] as Parameter<unknown>;
    const argument = given[index];
    if (parameter.shape === "one") values[name] = readOne(name, parameter, argument, options);
    else if (parameter.shape === "block") values[name] = asBlock(name, argument);
    else {
      const wholeColumn = asColumn(name, parameter, argument);
      if (wholeColumn === undefined) values[name] = undefined;
      else {
        const group = groups.get(parameter.group) ?? [];
        groups.set(parameter.group, group);
        group.push({ name, parameter, ...wholeColumn });
      }
    }
  });

  const layouts = new Map<string, Layout>();
  let leftOut: LeftOut | undefined;
  for (const [group, columns] of groups) {
    const layout = layOut(columns);
    layouts.set(group, layout);
    const doubted = new Set<string>();
    for (const column of columns)
      values[column.name] = readColumn(column, { ...layout, stretched: stretches(column, columns) }, options, doubted);
    const leaving = columns.filter(({ parameter }) => parameter.faults === "leave out").map(({ name }) => name);
    if (leaving.length === 0) continue;
    const kept = leaveOut(values, leaving, doubted, layout, rowFault);
    leftOut ??= kept.leftOut;
    layouts.set(group, kept.layout);
    for (const { name } of columns) values[name] = kept.columns.get(name) ?? values[name];
  }
  return { values, layouts, leftOut };
}

interface WholeColumn {
  /** The cells down to the last filled one: a copy, which the values read from them may replace. */
  readonly cells: unknown[];
  /** Height of the range, with the blank cells at the end. */
  readonly height: number;
  readonly lying: boolean;
}

interface ColumnToRead extends WholeColumn {
  readonly name: string;
  readonly parameter: Parameter<unknown>;
}

const isRange = (argument: Argument): argument is Cells => Array.isArray(argument);

function readOne(name: string, parameter: Parameter<unknown>, argument: Argument, options: ReadOptions): unknown {
  const kind = parameter.kind;
  const cell = singleCell(name, argument);
  if (cell === undefined || kind.isBlank(cell)) {
    if (parameter.fallback !== undefined) return readCell(name, kind, parameter.fallback, options);
    if (parameter.optional) return undefined;
    throw new Problem(`it is ${cell === undefined ? "left out" : "blank"}; enter ${kind.wanted}`, { argument: name });
  }
  return readCell(name, kind, cell, options);
}

function readCell(name: string, kind: CellKind<unknown>, cell: Cell, options: ReadOptions): unknown {
  try {
    return kind.read(cell, options);
  } catch (error) {
    throw error instanceof Refusal ? new Problem(error.message, { argument: name }) : error;
  }
}

function singleCell(name: string, argument: Argument): Cell | undefined {
  if (!isRange(argument)) return argument === null ? undefined : argument;
  const [row] = argument;
  if (argument.length === 1 && row?.length === 1) return row[0];
  throw new Problem(`a range of ${argument.length} by ${row?.length ?? 0} cells was given; give one cell`, {
    argument: name,
  });
}

function asBlock(name: string, argument: Argument): Cells {
  // A blank cell is a block of one blank: a function that asks for cells as they are wants to know of it.
  if (argument === undefined) throw new Problem("it is left out; give a range", { argument: name });
  return isRange(argument) ? argument : [[argument]];
}

function asColumn(name: string, parameter: Parameter<unknown>, argument: Argument): WholeColumn | undefined {
  if (argument === undefined || (argument === null && parameter.optional)) {
    if (parameter.optional) return undefined;
    throw new Problem("it is left out; give a cell or a column", { argument: name });
  }
  const range: Cells = isRange(argument) ? argument : [[argument]];
  const lying = range.length === 1 && (range[0]?.length ?? 0) > 1;
  const width = range[0]?.length ?? 0;
  if (!lying && width > 1) throw new Problem(`the range is ${width} columns wide; give one column`, { argument: name });
  const height = lying ? width : range.length;
  const cellAt = (index: number): Cell => (lying ? range[0]?.[index] : range[index]?.[0]) ?? null;
  const { isBlank } = parameter.kind;
  // From the end, so that a whole column of a sheet costs no more than looking at its blank cells once.
  let filled = height;
  while (filled > 0 && isBlank(cellAt(filled - 1))) filled--;
  const cells: unknown[] = new Array(filled);
  for (let index = 0; index < filled; index++) cells[index] = cellAt(index);
  return { cells, height, lying };
}

function layOut(given: readonly ColumnToRead[]): Layout {
  const spread = given.filter((column) => !stretches(column, given));
  const columns = spread.length > 0 ? spread : given;
  const height = Math.max(...columns.map((column) => column.cells.length));
  for (const column of columns) {
    // Ranges of unlike height are sound as long as nothing filled hangs over the shorter one.
    if (column.height < height) {
      const longest = columns.reduce((a, b) => (b.cells.length > a.cells.length ? b : a));
      throw new Problem(
        `it has ${column.height} ${column.height === 1 ? "row" : "rows"}, but ${longest.name} has ${longest.cells.length}; give ranges of the same height`,
        { argument: column.name },
      );
    }
  }
  const rows = recordRows(columns, height);
  return {
    rows,
    height,
    lying: columns.some((column) => column.lying),
    single: columns.every((column) => column.height === 1),
  };
}

/** The rows in which any column is filled. Column by column: that is the order in which the cells lie in memory. */
function recordRows(columns: readonly ColumnToRead[], height: number): Uint32Array {
  const filled = new Uint8Array(height);
  let count = 0;
  for (const { cells, parameter } of columns) {
    const { isBlank } = parameter.kind;
    const end = Math.min(height, cells.length);
    for (let i = 0; i < end; i++) {
      if (filled[i] === 1 || isBlank(cells[i] as Cell)) continue;
      filled[i] = 1;
      count++;
    }
  }
  const rows = new Uint32Array(count);
  for (let i = 0, next = 0; next < count; i++) if (filled[i] === 1) rows[next++] = i + 1;
  return rows;
}

const stretches = (column: ColumnToRead, group: readonly ColumnToRead[]): boolean =>
  column.parameter.repeats && column.height === 1 && group.some((other) => other.height > 1);

interface ColumnLayout extends Layout {
  /** One cell stands for all rows, so that its fault is that of the call. */
  readonly stretched: boolean;
}

/** @param doubted - takes the names of the columns in which a Doubt stands */
function readColumn(
  column: ColumnToRead,
  layout: ColumnLayout,
  options: ReadOptions,
  doubted: Set<string>,
): readonly unknown[] {
  const { name, cells, parameter } = column;
  const { isBlank, missing, wanted } = parameter.kind;
  const read = parameter.kind.columnReader(options);
  const refusesGaps = parameter.gaps === "refuse";
  const repeated = parameter.repeats && column.height === 1;
  const placeOf = (row: number) => (layout.single || repeated ? { argument: name } : { argument: name, row });
  const keepsFaults = !layout.stretched && keepsFault(parameter, layout);
  // Without blank rows the copy of the cells takes the values: a second long array costs more than the reading.
  const count = layout.rows.length;
  const values = count === cells.length && !repeated ? cells : new Array<unknown>(count);
  const blank: Fault =
    layout.stretched || (layout.single && !keepsFaults) ? { what: "it is blank", mend: `enter ${wanted}` } : missing;
  let index = 0;
  // A column that can be read is read in one go; after a cell that cannot, reading goes on with the next.
  while (index < values.length) {
    try {
      for (; index < values.length; index++) {
        const cell = ((repeated ? cells[0] : cells[(layout.rows[index] as number) - 1]) ?? null) as Cell;
        if (!isBlank(cell)) values[index] = read(cell);
        else if (refusesGaps) throw new Refusal(blank);
        else values[index] = undefined;
      }
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      if (!keepsFaults) throw new Problem(error.message, placeOf(layout.rows[index] as number));
      doubted.add(name);
      values[index++] = new Doubt(name, error.fault);
    }
  }
  return values;
}

function keepsFault({ faults }: Parameter<unknown>, { single }: Layout): boolean {
  if (faults === "refuse") return false;
  return faults === "keep in rows" ? !single : true;
}

function tooMany(given: number, names: readonly string[]): string {
  const most = names.length === 0 ? "no arguments" : `at most ${names.length}: ${names.join(", ")}`;
  return `${given} arguments were given, but this function takes ${most}`;
}
