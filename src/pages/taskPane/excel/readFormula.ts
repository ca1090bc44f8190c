import type { Cells } from "../../../cells/cell.ts";
import type { Found } from "../../parts/explain/cellsGiven.ts";
import { cellFrom } from "./cellFrom.ts";
import { partsOf } from "./partsOf.ts";
import { rangeNamed } from "./rangeNamed.ts";
import { cellsAtATime } from "./rowBlocks.ts";

/** A formula of the sheet, with what it reads and gives. */
export interface FormulaRead {
  /** Where it stands: `Gathers!D2`. */
  readonly cell: string;
  /** Undefined where the cell holds none. */
  readonly formula: string | undefined;
  readonly answer: Cells;
  readonly found: Found;
}

/**
 * Reads the formula of the active cell, or the one whose answer fills it. Ranges that Excel cannot find are left out.
 *
 * @param askedOf - the ranges that a formula names
 * @param tellsSpills - whether this Excel knows which cells an answer fills
 */
export const readFormula = (
  askedOf: (formula: string) => readonly string[],
  tellsSpills: boolean,
): Promise<FormulaRead> =>
  Excel.run(async (context) => {
    const active = context.workbook.getActiveCell();
    const anchor = tellsSpills ? active.getSpillParentOrNullObject() : undefined;
    for (const cell of [active, anchor]) cell?.load("address,formulas,rowCount,columnCount");
    await context.sync();
    const own = anchor && !anchor.isNullObject ? anchor : active;
    const [cell, formula] = [own.address, own.formulas[0]?.[0]];
    if (typeof formula !== "string" || !formula.startsWith("="))
      return { cell, formula: undefined, answer: [], found: new Map() };
    const spilled = tellsSpills ? own.getSpillingToRangeOrNullObject() : undefined;
    const located = await locateAll(context, askedOf(formula), own, spilled);
    const filled = spilled && !spilled.isNullObject ? spilled : own;
    const [answer = [], ...read] = await cellsOf(context, [filled, ...located.map(({ part }) => part)]);
    return {
      cell,
      formula,
      answer,
      found: new Map(located.map(({ typed, address }, index) => [typed, { address, cells: read[index] ?? [] }])),
    };
  });

interface Located {
  readonly typed: string;
  readonly address: string;
  readonly part: Excel.Range;
}

async function locateAll(
  context: Excel.RequestContext,
  asked: readonly string[],
  own: Excel.Range,
  spilled: Excel.Range | undefined,
): Promise<readonly Located[]> {
  spilled?.load("rowCount,columnCount");
  try {
    return await locate(context, asked, own);
  } catch {
    // One that is not there spoils them all: each for itself.
    spilled?.load("rowCount,columnCount");
    await context.sync();
    const located: Located[] = [];
    for (const one of asked) located.push(...(await locate(context, [one], own).catch(() => [])));
    return located;
  }
}

async function locate(
  context: Excel.RequestContext,
  asked: readonly string[],
  own: Excel.Range,
): Promise<readonly Located[]> {
  const ranges = asked.map((typed) => {
    const range = rangeNamed(context, typed, own);
    const used = range.getUsedRangeOrNullObject(true);
    range.load("address,rowIndex,columnIndex,rowCount,columnCount");
    used.load("rowIndex,columnIndex,rowCount,columnCount");
    return { typed, range, used };
  });
  await context.sync();
  const located = ranges.map(({ typed, range, used }) => ({
    typed,
    address: range.address,
    part: isWhole(range) ? toLastUsed(range, used) : range,
  }));
  if (ranges.some(({ range }) => isWhole(range))) {
    for (const { part } of located) part.load("rowCount,columnCount");
    await context.sync();
  }
  return located;
}

const isWhole = ({ rowCount, columnCount }: Excel.Range): boolean => rowCount >= 1_048_576 || columnCount >= 16_384;

/** From the first cell on, so that rows keep their numbers. */
function toLastUsed(range: Excel.Range, used: Excel.Range): Excel.Range {
  const first = range.getCell(0, 0);
  if (used.isNullObject) return first;
  return first.getResizedRange(
    used.rowIndex + used.rowCount - range.rowIndex - 1,
    used.columnIndex + used.columnCount - range.columnIndex - 1,
  );
}

/** Everything in one round trip, where it is no more than Excel hands over at once. */
async function cellsOf(context: Excel.RequestContext, ranges: readonly Excel.Range[]): Promise<readonly Cells[]> {
  const parts = ranges.map(partsOf);
  const atOnce = ranges.reduce((sum, { rowCount, columnCount }) => sum + rowCount * columnCount, 0) <= cellsAtATime;
  for (const part of parts.flat()) {
    part.load("values,valueTypes");
    if (!atOnce) await context.sync();
  }
  if (atOnce) await context.sync();
  return parts.map((pieces) => pieces.flatMap(cellsOfPart));
}

const cellsOfPart = ({ values, valueTypes }: Excel.Range): Cells =>
  values.map((line, row) => line.map((value, column) => cellFrom(value, valueTypes[row]?.[column])));
