import { words } from "../../words.ts";
import { keptAsText } from "../keptAsText.ts";
import { type Left, type Reentry, reentryOf } from "../reentryOf.ts";
import { inGroups } from "./inGroups.ts";
import { openSheets } from "./openSheets.ts";
import { readUsed } from "./readUsed.ts";
import { tellsSpills } from "./tellsSpills.ts";
import { troubleInWords } from "./troubleInWords.ts";
import { usedSheets } from "./usedSheets.ts";

export interface EnteredAgain {
  /** Formulas that showed #NAME?, or were spelt as Excel does not know them. */
  readonly unknown: number;
  /** Formulas that would have hidden #NAME?, and may have been right. */
  readonly asPrecaution: number;
  /** Cells that could not be entered, with the reason in words. */
  readonly failed: readonly Failure[];
}

interface Failure {
  readonly address: string;
  readonly why: string;
}

interface Found extends Reentry {
  readonly sheet: Excel.Worksheet;
  readonly cell: Excel.Range;
}

interface OwnCell extends Found {
  /** Why nothing is to be entered there. */
  readonly hindrance: string | undefined;
}

/**
 * Enters once more every FOOT formula that Excel does not know: those that show #NAME? or are spelt as in a file, and
 * those that would hide it. What Google Sheets left of formulas becomes formulas. Sheets protected without a password
 * are opened for it and protected again as they were.
 */
export const enterAgain = (): Promise<EnteredAgain> =>
  Excel.run(async (context) => {
    const cells = await unknownFormulas(context);
    const { shut, close } = await openSheets(context, sheetsToOpen(cells));
    try {
      const failures = new Map<OwnCell, string>();
      for (const one of cells) {
        const hindrance = shut.has(one.sheet) ? words.health.protectedSheet : one.hindrance;
        if (hindrance !== undefined) failures.set(one, hindrance);
      }
      const ready = cells.filter((one) => !failures.has(one));
      for (const group of inGroups(ready, ({ formula }) => formula.length + aroundFormula, mostSent))
        for (const [one, why] of await enter(context, group)) failures.set(one, why);
      const entered = ready.filter((one) => !failures.has(one));
      return {
        unknown: entered.filter(({ asPrecaution }) => !asPrecaution).length,
        asPrecaution: entered.filter(({ asPrecaution }) => asPrecaution).length,
        failed: [...failures].map(([one, why]) => ({ address: one.cell.address, why })),
      };
    } finally {
      await close();
    }
  });

// Excel on the web takes at most 5 MB at a time (published limit). What goes with a cell is a guess on the high side.
const mostSent = 2_000_000;
const aroundFormula = 500;
const askedOfCell = 1000;

const sheetsToOpen = (cells: readonly OwnCell[]): ReadonlySet<Excel.Worksheet> =>
  new Set(cells.filter(({ hindrance }) => hindrance === undefined).map(({ sheet }) => sheet));

async function unknownFormulas(context: Excel.RequestContext): Promise<readonly OwnCell[]> {
  const asks = tellsSpills();
  const found: Found[] = [];
  for await (const { of, range } of readUsed(context, await usedSheets(context))) {
    const { values } = range;
    for (const [row, formulas] of range.formulas.entries())
      for (const [column, formula] of formulas.entries()) {
        const shown = values[row]?.[column];
        // Where it cannot be asked what is an answer's own cell, only what is plainly wrong is touched.
        const reentry = asks || shown === "#NAME?" ? reentryOf(formula, shown, of.names) : undefined;
        if (reentry) found.push({ ...reentry, sheet: of.sheet, cell: range.getCell(row, column) });
      }
  }
  const own: OwnCell[] = [];
  for (const group of inGroups(found, () => askedOfCell, mostSent)) own.push(...(await ownCells(context, group, asks)));
  return own;
}

/** Those that do not merely show a part of another cell's answer; that cell's formula may be handed over for them too. */
async function ownCells(
  context: Excel.RequestContext,
  found: readonly Found[],
  asks: boolean,
): Promise<readonly OwnCell[]> {
  const cells = found.map((one) => ({
    one,
    parent: asks ? one.cell.getSpillParentOrNullObject() : undefined,
    beside: one.left && one.cell.getResizedRange(1, 1),
  }));
  for (const { one, parent, beside } of cells) {
    for (const cell of [one.cell, parent]) cell?.load("address");
    beside?.load("formulas");
  }
  await context.sync();
  return cells
    .filter(({ one, parent }) => !parent || parent.isNullObject || parent.address === one.cell.address)
    .map(({ one, beside }) => ({ ...one, hindrance: one.left && hindranceOf(one.left, beside?.formulas ?? []) }));
}

/** A list that was left cell by cell would be in its own way. */
function hindranceOf(left: Left, [line = [], below = []]: readonly (readonly unknown[])[]): string | undefined {
  if (left === "foreign") return words.health.leftForeign;
  return [line[1], below[0]].some((formula) => keptAsText(formula) === partOfList) ? words.health.leftList : undefined;
}

const partOfList = '="COMPUTED_VALUE"';

/** All of them at once; where one is refused by halves, to know which. */
async function enter(
  context: Excel.RequestContext,
  cells: readonly OwnCell[],
): Promise<readonly (readonly [OwnCell, string])[]> {
  try {
    for (const { cell, formula } of cells) cell.formulas = [[formula]];
    await context.sync();
    return [];
  } catch (error) {
    const [one] = cells;
    if (one && cells.length === 1) return [[one, troubleInWords(error)]];
    const middle = Math.ceil(cells.length / 2);
    return [...(await enter(context, cells.slice(0, middle))), ...(await enter(context, cells.slice(middle)))];
  }
}
