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
  // Columns of one kind share a reader and its memory: the animals for sale are among those treated.
  let readers: Map<CellKind<unknown>, Reader> | undefined;
  const readerOf = (kind: CellKind<unknown>): Reader => {
    readers ??= new Map();
    const read = readers.get(kind) ?? kind.columnReader(options);
    readers.set(kind, read);
    return read;
  };

  // Loops here and below: a workbook has a call in each of its rows, and most of its time is that of reading them.
  for (let index = 0; index < names.length; index++) {
    const name = names[index] as string;
    const parameter = parameters[name] as Parameter<unknown>;
    const handedOver = given[index];
    const argument = isRange(handedOver) || handedOver === undefined ? handedOver : asCell(handedOver, options.cellOf);
    if (parameter.shape === "one") values[name] = readOne(name, parameter, argument, options);
    else if (parameter.shape === "block") values[name] = asBlock(name, argument, options);
    else {
      const wholeColumn = asColumn(name, parameter, argument, options);
      if (wholeColumn === undefined) values[name] = undefined;
      else {
        const { range, filled, height, lying, cellOf } = wholeColumn;
        // Written out: to spread one object into another takes longer than reading a cell.
        const column = { name, parameter, readerOf, range, filled, height, lying, cellOf };
        const group = groups.get(parameter.group);
        if (group) group.push(column);
        else groups.set(parameter.group, [column]);
      }
    }
  }

  const layouts = new Map<string, Layout>();
  let leftOut: LeftOut | undefined;
  for (const [group, columns] of groups) {
    const { layout, columns: read } = readGroup(columns, options);
    layouts.set(group, layout);
    const doubted = columns.some(isLeftOut) ? new Set<string>() : undefined;
    for (let at = 0; at < columns.length; at++) {
      const column = columns[at] as ColumnToRead;
      values[column.name] = ofRecords(column, read[at], layout, columns, options, doubted);
    }
    if (doubted) {
      const leaving = columns.filter(isLeftOut).map(({ name }) => name);
      const kept = leaveOut(values, leaving, doubted, layout, rowFault);
      leftOut ??= kept.leftOut;
      layouts.set(group, kept.layout);
      for (const { name } of columns) values[name] = kept.columns.get(name) ?? values[name];
    }
    for (const { name, parameter } of columns)
      if (parameter.numbers && !(values[name] instanceof Float64Array))
        values[name] = Float64Array.from(values[name] as readonly number[]);
  }
  return { values, layouts, leftOut };
}

interface WholeColumn {
  /** Always there, if undefined, so that no copy of a column forgets it. */
  readonly cellOf: ReadOptions["cellOf"];
  readonly range: Cells;
  /** Place of the last filled cell, from 1. */
  readonly filled: number;
  /** Height of the range, with the blank cells at the end. */
  readonly height: number;
  readonly lying: boolean;
}

interface ColumnToRead extends WholeColumn {
  readonly name: string;
  readonly parameter: Parameter<unknown>;
  readonly readerOf: (kind: CellKind<unknown>) => Reader;
}

type Reader = (cell: Cell) => unknown;

const isLeftOut = ({ parameter }: ColumnToRead): boolean => parameter.faults === "leave out";

const isRange = (argument: Argument): argument is Cells => Array.isArray(argument);

function readOne(name: string, parameter: Parameter<unknown>, argument: Argument, options: ReadOptions): unknown {
  const kind = parameter.kind;
  const cell = singleCell(name, argument, options);
  if (cell === undefined || kind.isBlank(cell)) {
    if (parameter.fallback !== undefined) return fallbackOf(name, parameter, parameter.fallback, options);
    if (parameter.optional) return undefined;
    throw new Problem(`it is ${cell === undefined ? "left out" : "blank"}; enter ${kind.wanted}`, { argument: name });
  }
  return readCell(name, kind, cell, options);
}

/** What arguments that are left out stand for, read once for all calls. */
const fallbacks = new WeakMap<Parameter<unknown>, unknown>();

function fallbackOf(name: string, parameter: Parameter<unknown>, fallback: Cell, options: ReadOptions): unknown {
  const before = fallbacks.get(parameter);
  if (before !== undefined) return before;
  const value = readCell(name, parameter.kind, fallback, options);
  // A date's number is another day in another date system.
  if (parameter.kind.holds !== "date") fallbacks.set(parameter, value);
  return value;
}

function readCell(name: string, kind: CellKind<unknown>, cell: Cell, options: ReadOptions): unknown {
  try {
    return kind.read(cell, options);
  } catch (error) {
    throw error instanceof Refusal ? new Problem(error.message, { argument: name }) : error;
  }
}

function singleCell(name: string, argument: Argument, { cellOf }: ReadOptions): Cell | undefined {
  if (!isRange(argument)) return argument === null ? undefined : argument;
  const [row] = argument;
  if (argument.length === 1 && row?.length === 1) return asCell(row[0], cellOf);
  throw new Problem(`a range of ${argument.length} by ${row?.length ?? 0} cells was given; give one cell`, {
    argument: name,
  });
}

function asBlock(name: string, argument: Argument, { cellOf }: ReadOptions): Cells {
  // A blank cell is a block of one blank: a function that asks for cells as they are wants to know of it.
  if (argument === undefined) throw new Problem("it is left out; give a range", { argument: name });
  const block: Cells = isRange(argument) ? argument : [[argument]];
  // Mostly handed on without being copied.
  return cellOf !== undefined && block.some(holdsObject)
    ? block.map((row) => row.map((cell) => asCell(cell, cellOf)))
    : block;
}

function holdsObject(row: readonly Cell[]): boolean {
  for (let at = 0; at < row.length; at++) if (typeof row[at] === "object" && row[at] !== null) return true;
  return false;
}

/** A cell of a range as it was handed over, where there is one. */
function asCell(handedOver: Cell | undefined, cellOf: ReadOptions["cellOf"]): Cell {
  if (typeof handedOver !== "object") return handedOver ?? null;
  return handedOver !== null && cellOf !== undefined ? cellOf(handedOver) : handedOver;
}

function asColumn(
  name: string,
  parameter: Parameter<unknown>,
  argument: Argument,
  { cellOf }: ReadOptions,
): WholeColumn | undefined {
  if (argument === undefined || (argument === null && parameter.optional)) {
    if (parameter.optional) return undefined;
    throw new Problem("it is left out; give a cell or a column", { argument: name });
  }
  const range: Cells = isRange(argument) ? argument : [[argument]];
  const lying = range.length === 1 && (range[0]?.length ?? 0) > 1;
  const width = range[0]?.length ?? 0;
  if (!lying && width > 1) throw new Problem(`the range is ${width} columns wide; give one column`, { argument: name });
  const height = lying ? width : range.length;
  const column = { range, height, lying, filled: height, cellOf };
  const { isBlank } = parameter.kind;
  // From the end, so that a whole column of a sheet costs no more than looking at its blank cells once.
  while (column.filled > 0 && isBlank(cellAt(column, column.filled - 1))) column.filled--;
  return column;
}

const cellAt = ({ range, lying, cellOf }: WholeColumn, index: number): Cell =>
  asCell(lying ? range[0]?.[index] : range[index]?.[0], cellOf);

/** A group's columns as read, row by row, and where its records stand. A column of one cell for all rows is not read yet. */
function readGroup(given: readonly ColumnToRead[], options: ReadOptions) {
  const columns = given.some(repeatsOneCell) ? spreadOf(given) : given;
  let height = 0;
  let single = true;
  let lying = false;
  for (const column of columns) {
    height = Math.max(height, column.filled);
    single &&= column.height === 1;
    lying ||= column.lying;
  }
  for (const column of columns) {
    // Ranges of unlike height are sound as long as nothing filled hangs over the shorter one.
    if (column.height < height) {
      const longest = columns.reduce((a, b) => (b.filled > a.filled ? b : a));
      throw new Problem(
        `it has ${column.height} ${column.height === 1 ? "row" : "rows"}, but ${longest.name} has ${longest.filled}; give ranges of the same height`,
        { argument: column.name },
      );
    }
  }
  const read: (ReadColumn | undefined)[] = [];
  const spread: ReadColumn[] = [];
  for (const column of given) {
    const isRead = columns === given || columns.includes(column);
    const cells = isRead ? readCells(column, keepsFault(column.parameter, single), options) : undefined;
    read.push(cells);
    if (cells) spread.push(cells);
  }
  const layout: Layout = { rows: recordRows(spread, height), height, lying, single };
  return { layout, columns: read };
}

/** The columns without those of one cell for all rows; all of them where there are no others. */
function spreadOf(given: readonly ColumnToRead[]): readonly ColumnToRead[] {
  const spread = given.filter((column) => !stretches(column, given));
  return spread.length > 0 ? spread : given;
}

interface ReadColumn {
  /** For each row down to the last filled one: what was read, undefined for a blank, a Doubt for what cannot be read. */
  readonly values: readonly unknown[] | Float64Array;
  readonly blanks: number;
  readonly doubts: number;
}

/**
 * Reads a column in one pass, so that each cell is looked at once: the cells of a long column lie far apart in memory, and
 * fetching them takes longer than reading them.
 *
 * @param keepsFaults - whether what stands below a cell that cannot be read is of use
 */
function readCells(column: ColumnToRead, keepsFaults: boolean, options: ReadOptions): ReadColumn {
  const { range, filled, lying, name, parameter, readerOf, cellOf } = column;
  const { isBlank } = parameter.kind;
  const plain = plainCells(parameter.kind, options);
  const numbers = parameter.numbers && !lying ? plainNumbers(range, filled, plain) : undefined;
  if (numbers) return { values: numbers, blanks: 0, doubts: 0 };
  const { least, most, added } = plain;
  // Made for the first cell that is no plain number: in most columns there is none.
  let read: Reader | undefined;
  const values = new Array<unknown>(filled);
  let blanks = 0;
  let doubts = 0;
  let index = 0;
  // A column that can be read is read in one go; after a cell that cannot, reading goes on with the next.
  while (index < filled) {
    try {
      for (; index < filled; index++) {
        const cell = lying ? range[0]?.[index] : range[index]?.[0];
        // Nearly every number in a workbook, and here three comparisons in place of a reader's calls.
        if (isWholeFrom(cell, least, most)) {
          // Adding 0 makes a minus zero a plain one.
          values[index] = cell + added;
          continue;
        }
        read ??= readerOf(parameter.kind);
        const value = read(asCell(cell, cellOf));
        if (value === undefined) blanks++;
        values[index] = value;
      }
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      const doubt = new Doubt(name, error.fault);
      values[index++] = doubt;
      doubts++;
      // The call is going to be refused: of the rest it counts only in which rows there is a record.
      for (; index < filled && !keepsFaults; index++)
        if (isBlank(cellAt(column, index))) blanks++;
        else values[index] = doubt;
    }
  }
  return { values, blanks, doubts };
}

const isWholeFrom = (cell: unknown, least: number, most: number): cell is number =>
  typeof cell === "number" && cell >= least && cell <= most && Number.isInteger(cell);

/**
 * The numbers of a standing column in which each is plain; undefined where anything else is met. In a loop of its own, since
 * one that fills two kinds of array is slow for both.
 */
function plainNumbers(
  range: Cells,
  filled: number,
  { least, most, added }: ReturnType<typeof plainCells>,
): Float64Array | undefined {
  const numbers = new Float64Array(filled);
  for (let index = 0; index < filled; index++) {
    const cell = range[index]?.[0];
    if (!isWholeFrom(cell, least, most)) return undefined;
    numbers[index] = cell + added;
  }
  return numbers;
}

/** Between which numbers a whole one in a cell is read as it stands, once something is added; none for most kinds. */
function plainCells({ plain, holds }: CellKind<unknown>, { dayOffset }: ReadOptions) {
  const added = holds === "date" ? dayOffset : 0;
  const { least, most } = plain ?? { least: Number.POSITIVE_INFINITY, most: Number.NEGATIVE_INFINITY };
  return { least: least - added, most: most - added, added };
}

/** The rows, from 1, in which any column is filled. */
function recordRows(columns: readonly ReadColumn[], height: number): Uint32Array {
  if (columns.some(({ values, blanks }) => blanks === 0 && values.length === height))
    return height === 1 ? onlyRow : everyRow(height);
  const filled = new Uint8Array(height);
  let count = 0;
  for (const { values } of columns) {
    for (let i = 0; i < values.length; i++) {
      if (values[i] === undefined || filled[i] === 1) continue;
      filled[i] = 1;
      count++;
    }
  }
  const rows = new Uint32Array(count);
  for (let i = 0, next = 0; next < count; i++) if (filled[i] === 1) rows[next++] = i + 1;
  return rows;
}

/** Nobody writes into it, so that the longest there was serves for all: most columns hold a record in every row. */
let counted = new Uint32Array(0);

function everyRow(height: number): Uint32Array {
  if (counted.length < height) {
    counted = new Uint32Array(height);
    for (let i = 0; i < height; i++) counted[i] = i + 1;
  }
  return counted.subarray(0, height);
}

const onlyRow = everyRow(1);

const repeatsOneCell = ({ parameter, height }: ColumnToRead): boolean => parameter.repeats && height === 1;
const isTall = ({ height }: ColumnToRead): boolean => height > 1;

const stretches = (column: ColumnToRead, group: readonly ColumnToRead[]): boolean =>
  repeatsOneCell(column) && group.some(isTall);

/**
 * The values of a column in the rows that hold a record.
 *
 * @param read - undefined for a column whose one cell stands for all rows
 * @param group - all columns of the group
 * @param doubted - takes the names of the columns in which a Doubt stands, where they are of use
 * @throws Problem for the first cell that is refused
 */
function ofRecords(
  column: ColumnToRead,
  read: ReadColumn | undefined,
  layout: Layout,
  group: readonly ColumnToRead[],
  options: ReadOptions,
  doubted: Set<string> | undefined,
): readonly unknown[] | Float64Array {
  const { name, parameter } = column;
  const { rows, height, single } = layout;
  if (rows.length === 0) return [];
  const stretched = stretches(column, group);
  const keepsFaults = !stretched && keepsFault(parameter, single);
  const { values, blanks, doubts } = read ?? readCells(column, keepsFaults, options);
  const refusesGaps = parameter.gaps === "refuse";
  const isWhole = rows.length === height && values.length === height;
  if (isWhole && (keepsFaults || doubts === 0) && (!refusesGaps || blanks === 0)) {
    if (doubts > 0) doubted?.add(name);
    return values;
  }
  const { missing, wanted } = parameter.kind;
  const blank: Fault =
    stretched || (single && !keepsFaults) ? { what: "it is blank", mend: `enter ${wanted}` } : missing;
  const ofRows = new Array<unknown>(rows.length);
  for (let index = 0; index < rows.length; index++) {
    const row = rows[index] as number;
    const value = stretched ? values[0] : values[row - 1];
    const doubt = value === undefined && refusesGaps ? new Doubt(name, blank) : value;
    ofRows[index] = doubt;
    if (!(doubt instanceof Doubt)) continue;
    if (!keepsFaults)
      throw new Problem(doubt.sentence, single || stretched ? { argument: name } : { argument: name, row });
    doubted?.add(name);
  }
  return ofRows;
}

function keepsFault({ faults }: Parameter<unknown>, single: boolean): boolean {
  if (faults === "refuse") return false;
  return faults === "keep in rows" ? !single : true;
}

function tooMany(given: number, names: readonly string[]): string {
  const most = names.length === 0 ? "no arguments" : `at most ${names.length}: ${names.join(", ")}`;
  return `${given} arguments were given, but this function takes ${most}`;
}
