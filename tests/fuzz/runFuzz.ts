import { catalogue } from "../../functions/catalogue.ts";
import type { Cells } from "../../src/cells/cell.ts";
import type { AnyFunction } from "../../src/definition/defineFunction.ts";
import { evaluate, type Outcome } from "../../src/definition/evaluate.ts";
import type { Argument } from "../../src/reading/readArguments.ts";
import { type SeededRandom, seededRandom } from "../../src/workbooks/inventedFlock/seededRandom.ts";
import { faultsIn } from "./faultsIn.ts";
import { hostileArguments, wholeColumns } from "./hostileArguments.ts";
import { argumentsOf, laws } from "./laws.ts";
import { soundCall } from "./soundCall.ts";

export interface FuzzOptions {
  readonly seed: number;
  /** Calls of worksheet functions in all. */
  readonly calls: number;
  /** Told now and then how many calls have been made. */
  readonly onProgress?: (calls: number) => void;
}

interface Violation {
  /** Together with the seed this makes the same call again. */
  readonly round: number;
  readonly functionName: string;
  /** The law that is broken, or what is wrong with the answer. */
  readonly what: string;
  readonly call: string;
}

/** What one function was put through. */
interface FunctionCount {
  calls: number;
  answered: number;
  slowestMs: number;
}

export interface FuzzReport {
  readonly calls: number;
  readonly answered: number;
  readonly lawsChecked: ReadonlyMap<string, number>;
  readonly functions: ReadonlyMap<string, FunctionCount>;
  readonly violations: readonly Violation[];
}

/** So that a fault in one place does not fill the memory with its like. */
const mostViolations = 200;

// Generous, since a busy machine stops a process for a moment: a scan inside a scan over a whole column takes hours.
const mostMs = (cells: number): number => 10_000 + cells * 0.05;

/** One round in so many is over whole columns of a sheet. */
const wholeColumnEvery = 9973;

/** Makes calls of every function in turn, half of them hostile, half of them sound and then changed by the laws. */
export function runFuzz({ seed, calls, onProgress }: FuzzOptions): FuzzReport {
  const functions = new Map<string, FunctionCount>(
    catalogue.map(({ name }) => [name, { calls: 0, answered: 0, slowestMs: 0 }]),
  );
  const lawsChecked = new Map(Object.keys(laws).map((law) => [law, 0]));
  const violations: Violation[] = [];
  let made = 0;
  let answered = 0;

  const note = (round: number, { name }: AnyFunction, what: string, given: readonly Argument[]): void => {
    if (violations.length < mostViolations)
      violations.push({ round, functionName: name, what, call: shortCall(given) });
  };

  const tryCall = (round: number, definition: AnyFunction, given: readonly Argument[]): Outcome | undefined => {
    const count = functions.get(definition.name) as FunctionCount;
    made++;
    count.calls++;
    const started = performance.now();
    let outcome: Outcome;
    try {
      outcome = evaluate(definition, given);
    } catch (error) {
      note(round, definition, `it threw ${(error as Error)?.stack?.slice(0, 400) ?? String(error)}`, given);
      return undefined;
    }
    const ms = performance.now() - started;
    count.slowestMs = Math.max(count.slowestMs, ms);
    if (outcome.ok) {
      answered++;
      count.answered++;
    }
    if (ms > mostMs(cellsIn(given))) note(round, definition, `it took ${Math.round(ms)} ms`, given);
    const fault = faultsIn(definition, given, outcome);
    if (fault !== undefined) note(round, definition, fault, given);
    return outcome;
  };

  const tryLaws = (round: number, definition: AnyFunction, random: SeededRandom): void => {
    const call = soundCall(definition, random);
    const given = argumentsOf(call);
    const outcome = tryCall(round, definition, given);
    if (outcome === undefined) return;
    for (const [name, law] of Object.entries(laws)) {
      if (!random.happens(0.4)) continue;
      made++;
      lawsChecked.set(name, (lawsChecked.get(name) ?? 0) + 1);
      const broken = law(call, outcome, random);
      if (broken !== undefined) note(round, definition, `${name}: ${broken}`, given);
    }
  };

  let nextTold = 0;
  for (let round = 0; made < calls; round++) {
    const random = seededRandom(Math.imul(round + 1, 0x9e3779b1) ^ seed);
    const definition = catalogue[round % catalogue.length] as AnyFunction;
    if (round % wholeColumnEvery === 1) tryCall(round, definition, wholeColumns(definition, random));
    else if (random.happens(0.5)) tryCall(round, definition, hostileArguments(definition, random));
    else tryLaws(round, definition, random);
    if (onProgress && made >= nextTold) {
      onProgress(made);
      nextTold += 50_000;
    }
  }
  return { calls: made, answered, lawsChecked, functions, violations };
}

const cellsIn = (given: readonly Argument[]): number =>
  given.reduce<number>((sum, argument) => sum + (Array.isArray(argument) ? (argument as Cells).length : 1), 0);

function shortCall(given: readonly Argument[]): string {
  const texts = given.map((argument) => {
    if (argument === undefined) return "left out";
    const range = Array.isArray(argument) && argument.length > 20 ? argument.slice(0, 20) : argument;
    return JSON.stringify(range, (_, value) => {
      if (typeof value === "number" && (!Number.isFinite(value) || Object.is(value, -0)))
        return `number ${Object.is(value, -0) ? "-0" : value}`;
      return typeof value === "string" && value.length > 60 ? `${value.slice(0, 60)}… (${value.length})` : value;
    });
  });
  return `(${texts.join("; ")})`.slice(0, 1500);
}
