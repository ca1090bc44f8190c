import { catalogue } from "../../functions/catalogue.ts";
import type { Cell } from "../../src/cells/cell.ts";
import type { AnyFunction } from "../../src/definition/defineFunction.ts";
import { evaluate } from "../../src/definition/evaluate.ts";
import { callOverRows, columnOf, growing, mostRows } from "./manyRows.ts";
import { processorTime } from "./processorTime.ts";

const fewestRounds = 3;
const mostRounds = 15;
/** How long a table size is worked on in all, in milliseconds, unless that takes more rounds than the most. */
const enough = 150;

/** A line of what is printed. */
export interface Scaled {
  readonly name: string;
  /** Not one of the bare passes that functions are held against. */
  readonly isFunction: boolean;
  /** Milliseconds for a table of each number of rows that the function takes. */
  readonly times: readonly number[];
  /** The most memory of the process so far, in MB. */
  readonly memory: number;
}

/** For a process of its own, so that nothing but the functions is in its memory: prints a line a function. */
export function timeScaling(...given: readonly string[]): void {
  const sizes = given.map(Number);
  report("bare pass", false, sizes, barePass);
  report("bare lookup", false, sizes, bareLookup);
  for (const definition of catalogue.filter((one) => growing(one).length > 0)) {
    const most = mostRows(definition);
    report(
      definition.name,
      true,
      sizes.filter((rows) => rows <= most),
      (rows) => callOf(definition, rows),
    );
  }
}

function report(
  name: string,
  isFunction: boolean,
  rows: readonly number[],
  make: (rows: number) => () => unknown,
): void {
  warmUp(make(Math.min(...rows)));
  const rowsInAll = Math.max(...rows);
  const times = rows.map((count) => timeOf(() => make(count), Math.round(rowsInAll / count)));
  const memory = Math.round(process.resourceUsage().maxRSS / 1024);
  console.log(JSON.stringify({ name, isFunction, times, memory } satisfies Scaled));
}

// Enough calls for the engine to have compiled what it is going to compile.
function warmUp(call: () => unknown): void {
  for (let done = 0; done < 100; done++) call();
}

/**
 * Milliseconds a table, when so many tables are worked out one after the other. However short the tables are, as many
 * rows are in memory in all, so the cells of each are as far from the processor; and the answers of all are kept, as a
 * spreadsheet keeps them.
 */
function timeOf(make: () => () => unknown, tables: number): number {
  const calls = Array.from({ length: tables }, make);
  const round = (): number => {
    // What was made before is not for these calls to clear away.
    globalThis.gc?.();
    return processorTime(() => calls.map((call) => call()));
  };
  // A quick function takes a few milliseconds a round, and one step of the collector on another thread takes as long: it
  // falls on the one call of a long table or on one of a hundred short ones, so only more rounds find one without it.
  const times: number[] = [];
  let spent = 0;
  while (times.length < fewestRounds || (spent < enough && times.length < mostRounds)) {
    const time = round();
    times.push(time);
    spent += time;
  }
  return Math.min(...times) / tables;
}

function callOf(definition: AnyFunction, rows: number): () => unknown {
  const given = callOverRows(definition, rows);
  return () => {
    const outcome = evaluate(definition, given);
    // A refusal must not be taken for speed.
    if (!outcome.ok) throw new Error(`${definition.name} over ${rows} rows: ${outcome.message}`);
    return outcome.cells;
  };
}

/** The least that any function with a cell for each row does: look at a cell of each column, make a row of one cell. */
function barePass(rows: number): () => unknown {
  const one = Array.from({ length: rows }, (_, row): [number] => [46_000 + (row % 700)]);
  const other = Array.from({ length: rows }, (_, row): [number] => [20 + (row % 60)]);
  return () => {
    const cells = new Array<[number]>(rows);
    for (let row = 0; row < rows; row++) cells[row] = [(one[row]?.[0] ?? 0) + (other[row]?.[0] ?? 0)];
    return cells;
  };
}

/** The least that any function of animals does: look each row's tag up, and keep its latest date. */
function bareLookup(rows: number): () => unknown {
  const [tags, dates] = [columnOf("tags", rows), columnOf("dates", rows)];
  return () => {
    const latest = new Map<Cell, number>();
    for (let row = 0; row < rows; row++) {
      const tag = tags[row]?.[0] ?? null;
      const date = dates[row]?.[0] as number;
      if (date > (latest.get(tag) ?? 0)) latest.set(tag, date);
    }
    return latest.size;
  };
}
