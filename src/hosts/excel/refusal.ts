import type { ProblemCode } from "../../cells/problem.ts";
import type { AnyFunction } from "../../definition/defineFunction.ts";
import { type EvaluateOptions, evaluate } from "../../definition/evaluate.ts";
import type { Argument } from "../../reading/readArguments.ts";

/** Why a function refuses what it is given; undefined where it does not, or there is no such function. */
export type Refusal = (
  name: string,
  given: readonly Argument[],
  options?: EvaluateOptions,
) => { readonly code: ProblemCode; readonly message: string } | undefined;

/**
 * The sentences of errors, which Excel shows beside a cell but tells no program.
 *
 * @example
 * refusal(catalogue)("FLOCKPREV", [21, 20])?.code // → "#VALUE!"
 */
export const refusal =
  (definitions: readonly AnyFunction[]): Refusal =>
  (name, given, options) => {
    const definition = definitions.find((known) => known.name === name);
    if (definition === undefined) return undefined;
    const outcome = evaluate(definition, given, options);
    return outcome.ok ? undefined : { code: outcome.code, message: outcome.message };
  };
