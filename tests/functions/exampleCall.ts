import type { Cell, Cells } from "../../src/cells/cell.ts";
import { Problem } from "../../src/cells/problem.ts";
import type { About, ExampleAnswer, ExampleArgument, ExampleCell } from "../../src/definition/defineFunction.ts";
import type { Outcome } from "../../src/definition/evaluate.ts";
import type { Argument } from "../../src/reading/readArguments.ts";

const isRectangle = (argument: ExampleArgument): argument is Cells =>
  Array.isArray(argument) && argument.length > 0 && argument.every((row) => Array.isArray(row));

/** An example's argument as a spreadsheet hands it over: a list is a column. */
export function asArgument(argument: ExampleArgument): Argument {
  if (!Array.isArray(argument)) return argument as Cell | undefined;
  if (isRectangle(argument)) return argument;
  return (argument as readonly Cell[]).map((cell) => [cell]);
}

const isAbout = (cell: ExampleCell): cell is About => typeof cell === "object" && "about" in cell;

/** Fails with both values in the message unless the outcome is what the example says. */
export function mismatch(outcome: Outcome, gives: ExampleAnswer): string | undefined {
  if (gives instanceof Problem) {
    if (outcome.ok) return `expected ${gives.code} "${gives.message}", got ${JSON.stringify(outcome.cells)}`;
    return outcome.code === gives.code && outcome.message === gives.message
      ? undefined
      : `expected ${gives.code} "${gives.message}", got ${outcome.code} "${outcome.message}"`;
  }
  if (!outcome.ok) return `expected ${JSON.stringify(gives)}, got ${outcome.code} "${outcome.message}"`;
  const wanted: readonly (readonly ExampleCell[])[] = Array.isArray(gives)
    ? (gives as readonly (readonly ExampleCell[])[])
    : [[gives as ExampleCell]];
  const same =
    wanted.length === outcome.cells.length &&
    wanted.every(
      (row, r) =>
        row.length === outcome.cells[r]?.length && row.every((cell, c) => sameCell(cell, outcome.cells[r]?.[c])),
    );
  return same ? undefined : `expected ${JSON.stringify(wanted)}, got ${JSON.stringify(outcome.cells)}`;
}

function sameCell(wanted: ExampleCell, got: Cell | undefined): boolean {
  if (!isAbout(wanted)) return Object.is(wanted, got);
  return typeof got === "number" && Math.abs(got - wanted.about) <= 0.5 * 10 ** -wanted.decimals;
}
