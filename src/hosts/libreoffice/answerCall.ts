import { catalogue } from "../../../functions/catalogue.ts";
import type { Cell, Cells, ErrorCode } from "../../cells/cell.ts";
import type { AnyFunction } from "../../definition/defineFunction.ts";
import { evaluate } from "../../definition/evaluate.ts";
import { wholeDays } from "../../reading/numbers.ts";
import type { Parameter } from "../../reading/parameter.ts";
import type { Argument } from "../../reading/readArguments.ts";

/** A range as the extension sends it: the blank rows at its end are only counted. */
interface SentRange {
  readonly rows: number;
  readonly cells: readonly (readonly (number | string)[])[];
}

/** A cell, a range, or null for an argument that was left out. */
type SentArgument = number | string | null | SentRange;

/** One call as the extension sends it: the function's name, its arguments, and whether the document counts from 1904. */
export type SentCall = readonly [name: string, given: readonly SentArgument[], from1904?: boolean];

export type SentAnswer =
  | { readonly cells: readonly (readonly (number | string)[])[] }
  | { readonly code: ErrorCode; readonly message: string };

const byName: ReadonlyMap<string, AnyFunction> = new Map(
  catalogue.map((definition) => [definition.name, definition] as const),
);

/**
 * Answers one call of the extension.
 *
 * @returns the cells, in which yes and no are 1 and 0 because Calc has no other form for them; or the error and its
 * message
 * @example
 * answerCall(["FLOCKPREV", [4, 20]]) // → { cells: [[0.2]] }
 */
export function answerCall([name, given, from1904 = false]: SentCall): SentAnswer {
  const definition = byName.get(name);
  if (definition === undefined) return { code: "#NAME?", message: `there is no function ${name}` };
  const parameters = Object.values(definition.parameters) as Parameter<unknown>[];
  const outcome = evaluate(
    definition,
    given.map((argument, index) => {
      const parameter = parameters[index];
      return parameter !== undefined && isDoubtful(argument, parameter) ? null : received(argument);
    }),
    { dateSystem: from1904 ? 1904 : 1900 },
  );
  return outcome.ok
    ? { cells: outcome.cells.map((row) => row.map(sent)) }
    : { code: outcome.code, message: outcome.message };
}

/**
 * Whether a lone 0 may be a blank cell whose reading as 0 would put an animal into food too early.
 *
 * Calc (7.4 and 25.2, seen 2026-11) hands over a reference to one blank cell as 0. A missing withdrawal period must
 * never pass for none, so here a lone 0 days is taken as blank; a period of 0 days is written as the text "0", or in a
 * column of several rows.
 */
export function isDoubtful(argument: SentArgument, parameter: Parameter<unknown>): boolean {
  if (parameter.kind !== wholeDays || parameter.shape !== "column") return false;
  if (argument === null || typeof argument !== "object") return argument === 0;
  return argument.rows === 1 && argument.cells[0]?.length === 1 && argument.cells[0][0] === 0;
}

function received(argument: SentArgument): Argument {
  if (argument === null) return undefined;
  if (typeof argument !== "object") return argument;
  const { rows, cells } = argument;
  if (cells.length === rows) return cells;
  const blankRow: readonly Cell[] = (cells[0] ?? [null]).map(() => null);
  const whole: (readonly Cell[])[] = [...cells];
  while (whole.length < rows) whole.push(blankRow);
  return whole satisfies Cells;
}

function sent(cell: Cell): number | string {
  if (typeof cell === "boolean") return cell ? 1 : 0;
  if (typeof cell === "number" || typeof cell === "string") return cell;
  return cell === null ? "" : cell.error;
}
