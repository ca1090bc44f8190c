import type { ProblemCode } from "../../cells/problem.ts";
import type { AnyFunction } from "../../definition/defineFunction.ts";
import { evaluate, type Outcome } from "../../definition/evaluate.ts";
import type { Argument } from "../../reading/readArguments.ts";
import type { ExcelHost } from "./excelHost.ts";
import { fromExcel } from "./fromExcel.ts";
import { type ExcelAnswer, toExcel } from "./toExcel.ts";

/** The part of the vendor's runtime that is used. */
export type Runtime = Pick<typeof CustomFunctions, "associate" | "Error" | "ErrorCode">;

/**
 * Gives every function to Excel under its name.
 *
 * @param host - what this Excel can do; calls that come before it is known wait for it
 */
export function register(definitions: readonly AnyFunction[], runtime: Runtime, host: Promise<ExcelHost>): void {
  let known: ExcelHost | undefined;
  void host.then((answer) => {
    known = answer;
  });
  for (const definition of definitions) {
    runtime.associate(definition.name, (...given: readonly unknown[]) =>
      known ? answer(definition, given, known, runtime) : host.then((host) => answer(definition, given, host, runtime)),
    );
  }
}

function answer(definition: AnyFunction, given: readonly unknown[], host: ExcelHost, runtime: Runtime): ExcelAnswer {
  // The runtime puts an object of its own after the last argument of every call.
  const outcome = outcomeOf(definition, given.slice(0, -1), host, runtime);
  if (!outcome.ok) throw new runtime.Error(errorCode(outcome.code, runtime), outcome.message);
  return toExcel(definition, outcome, host.formattedNumbers);
}

function outcomeOf(definition: AnyFunction, given: readonly unknown[], host: ExcelHost, runtime: Runtime): Outcome {
  try {
    return evaluate(definition, given as readonly Argument[], { dateSystem: host.dateSystem, cellOf: fromExcel });
  } catch (error) {
    // Excel drops the message of any other error (its documents, read 2026-11), and a cell that fails must say why.
    const why = error instanceof Error ? error.message : String(error);
    throw new runtime.Error(
      runtime.ErrorCode.invalidValue,
      `${definition.name} failed through a fault of its own (${why}); please report it with this formula`,
    );
  }
}

const errorCode = (code: ProblemCode, { ErrorCode }: Runtime): CustomFunctions.ErrorCode =>
  code === "#N/A" ? ErrorCode.notAvailable : ErrorCode.invalidValue;
