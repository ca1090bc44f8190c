import { catalogue } from "../../functions/catalogue.ts";
import type { AnyFunction } from "../../src/definition/defineFunction.ts";
import { evaluate } from "../../src/definition/evaluate.ts";
import { callOverRows, growing, mostRows } from "./manyRows.ts";
import { processorTime } from "./processorTime.ts";

// A process of its own, which `scaling.bench.ts` starts with the memory settings that it needs. Its arguments are the
// numbers of rows; it prints a line a function.
const sizes = process.argv.slice(2).map(Number);

// Short columns are worked out over and over, so that each time stands for many rows and much new memory.
const rowsInAll = 300_000;
const longEnough = 400;

/** What the process prints. */
export interface Scaled {
  /** A function, or `bare pass`. */
  readonly name: string;
  /** Milliseconds for each number of rows that the function takes. */
  readonly times: readonly number[];
  /** The most memory of the process so far, in MB. */
  readonly memory: number;
}

if (sizes.length > 0) {
  report("bare pass", sizes, barePass);
  for (const definition of catalogue.filter((one) => growing(one).length > 0)) {
    report(
      definition.name,
      sizes.filter((rows) => rows <= mostRows(definition)),
      (rows) => callOf(definition, rows),
    );
  }
}

function report(name: string, rows: readonly number[], make: (rows: number) => () => unknown): void {
  const times = rows.map((count) => timeOf(make(count), count));
  const memory = Math.round(process.resourceUsage().maxRSS / 1024);
  console.log(JSON.stringify({ name, times, memory } satisfies Scaled));
}

/** Milliseconds of one call: the less of two batches, or of one that was long. */
function timeOf(call: () => unknown, rows: number): number {
  const calls = Math.max(1, Math.round(rowsInAll / rows));
  const batch = (): number => {
    // What was made before is not this call's to clear away.
    globalThis.gc?.();
    return processorTime(() => {
      for (let done = 0; done < calls; done++) call();
    });
  };
  const first = batch();
  return (first > longEnough ? first : Math.min(first, batch())) / calls;
}

function callOf(definition: AnyFunction, rows: number): () => unknown {
  const given = callOverRows(definition, rows);
  return () => {
    const outcome = evaluate(definition, given);
    // A refusal must not be taken for speed.
    if (!outcome.ok) throw new Error(`${definition.name} over ${rows} rows: ${outcome.message}`);
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
