import type { Cell, Cells } from "../../src/cells/cell.ts";
import type { AnyFunction } from "../../src/definition/defineFunction.ts";
import type { Outcome } from "../../src/definition/evaluate.ts";
import type { Argument } from "../../src/reading/readArguments.ts";

/** What is wrong with the answer to a call, whatever the call was; nothing when it is sound. */
export function faultsIn(definition: AnyFunction, given: readonly Argument[], outcome: Outcome): string | undefined {
  if (outcome.ok) return faultsInCells(outcome.cells, holdsNoNumber(given));
  const { code, message } = outcome;
  if (code !== "#VALUE!" && code !== "#N/A") return `the code is ${code}`;
  if (/undefined|\[object|NaN days|null/.test(message)) return `the message leaks: ${message.slice(0, 200)}`;
  if (/^\d+ arguments were given/.test(message)) return undefined;
  const place = /^([a-z][a-z0-9_]*)(?:, row (\d+))?: ./s.exec(message);
  if (!place || !((place[1] as string) in definition.parameters))
    return `no argument is named: ${message.slice(0, 200)}`;
  const row = place[2];
  if (row !== undefined && (Number(row) < 1 || Number(row) > tallest(given)))
    return `there is no row ${row}: ${message}`;
  return undefined;
}

function faultsInCells(cells: Cells, mayQuoteNoNumber: boolean): string | undefined {
  const [first] = cells;
  if (first === undefined || first.length === 0) return "there is no cell";
  for (const row of cells) {
    if (row.length !== first.length) return `rows of ${first.length} and ${row.length} cells`;
    for (const cell of row) {
      const fault = faultInCell(cell, mayQuoteNoNumber);
      if (fault !== undefined) return fault;
    }
  }
  return undefined;
}

function faultInCell(cell: Cell | undefined, mayQuoteNoNumber: boolean): string | undefined {
  if (typeof cell === "boolean") return undefined;
  if (typeof cell === "number") return Number.isFinite(cell) ? undefined : `a cell holds ${cell}`;
  if (typeof cell !== "string") return `a cell holds ${JSON.stringify(cell)}`;
  if (/^[=+\-@\t\r]/.test(cell)) return `a cell starts a formula: ${cell.slice(0, 60)}`;
  if (/undefined|\[object/.test(cell)) return `a cell leaks: ${cell.slice(0, 200)}`;
  if (!mayQuoteNoNumber && /\b(NaN|Infinity)\b/.test(cell)) return `a cell says ${cell.slice(0, 200)}`;
  return undefined;
}

const isRange = (argument: Argument): argument is Cells => Array.isArray(argument);

const tallest = (given: readonly Argument[]): number =>
  given.reduce<number>(
    (most, argument) =>
      isRange(argument)
        ? Math.max(
            most,
            argument.length,
            argument.reduce((a, row) => Math.max(a, row.length), 0),
          )
        : most,
    1,
  );

/** A cell that was handed over as NaN may be quoted as such. */
const holdsNoNumber = (given: readonly Argument[]): boolean =>
  given.some((argument) =>
    isRange(argument)
      ? argument.length < 10_000 && argument.some((row) => row.some(isNoNumber))
      : isNoNumber(argument as Cell),
  );

const isNoNumber = (cell: Cell | undefined): boolean => typeof cell === "number" && !Number.isFinite(cell);
