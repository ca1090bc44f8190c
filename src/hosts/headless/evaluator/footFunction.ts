import type { Cell } from "../../../cells/cell.ts";
import type { AnyFunction } from "../../../definition/defineFunction.ts";
import { evaluate } from "../../../definition/evaluate.ts";
import type { Argument } from "../../../reading/readArguments.ts";
import type { SheetArea } from "../../../workbook/formula/referencesIn.ts";
import type { Format } from "../../../writing/format.ts";
import type { Calling, WorksheetFunction } from "./evaluateFormula.ts";
import { errorOf, gridOr, isGrid, isLambda, isReference, type Value } from "./values.ts";

/** Hears what a call came to beyond its cells. */
export interface Heard {
  readonly refused: (message: string) => void;
  readonly answered: (shown: { formats: readonly Format[]; headings: boolean }) => void;
}

// A range of two rows or more must stay one: an answer for a single cell reads otherwise.
const leastRows = 2;

/** The last place in a range, from 0, whose row holds anything. */
function lastFilled({ sheet, area }: SheetArea, { store }: Calling): number {
  const part = store.filledPart({ sheet, area });
  let last = -1;
  for (let column = part.left; column <= part.right; column += 1) {
    const cells = store.column(sheet, column);
    let row = Math.min(part.bottom, cells.length - 1);
    const least = Math.max(area.top, area.top + last + 1);
    const from = row;
    while (row >= least && (cells[row] ?? "") === "") row -= 1;
    store.spend(from - row);
    last = Math.max(last, row - area.top);
  }
  return last;
}

/**
 * Ranges of one height are handed over down to the last row that is filled in any of them, so that the blank rows of a
 * book's room cost nothing.
 */
function heightsOf(given: readonly (Value | undefined)[], calling: Calling): ReadonlyMap<number, number> | undefined {
  let heights: Map<number, number> | undefined;
  for (const value of given) {
    const only = isReference(value) ? value.areas[0] : undefined;
    if (!only) continue;
    const height = only.area.bottom - only.area.top + 1;
    if (height <= leastRows) continue;
    calling.store.watch?.(only);
    heights ??= new Map();
    heights.set(height, Math.max(heights.get(height) ?? leastRows, lastFilled(only, calling) + 1));
  }
  return heights;
}

function argumentOf(
  value: Value | undefined,
  heights: ReadonlyMap<number, number> | undefined,
  { store }: Calling,
): Argument {
  if (value === undefined) return null;
  if (isLambda(value)) return errorOf("#VALUE!");
  if (isGrid(value)) return value.grid as Cell[][];
  if (!isReference(value)) return value;
  const [only] = value.areas;
  if (!only || value.areas.length > 1) return errorOf("#VALUE!");
  const { sheet, area } = only;
  const height = heights?.get(area.bottom - area.top + 1);
  return store.cells(height === undefined ? only : { sheet, area: { ...area, bottom: area.top + height - 1 } });
}

/** A worksheet function of ours. Blanks reach it as blanks: a sheep that was not scored is no sound one. */
export function footFunction(definition: AnyFunction, dateSystem: 1900 | 1904, heard: Heard): WorksheetFunction {
  // Calls that are shown alike share what says so: there may be one in each row of a sheet.
  let shown: Parameters<Heard["answered"]>[0] | undefined;
  return (given, calling) => {
    const heights = heightsOf(given, calling);
    const outcome = evaluate(
      definition,
      given.map((value) => argumentOf(value, heights, calling)),
      { dateSystem },
    );
    if (!outcome.ok) {
      heard.refused(outcome.message);
      return errorOf(outcome.code);
    }
    const { formats, headings } = outcome;
    if (shown?.formats !== formats) shown = { formats, headings };
    heard.answered(shown);
    return gridOr(outcome.cells);
  };
}
