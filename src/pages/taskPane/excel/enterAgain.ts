import { words } from "../../words.ts";
import { typedAgain } from "../typedAgain.ts";
import { partsOf } from "./partsOf.ts";
import { troubleInWords } from "./troubleInWords.ts";

export interface EnteredAgain {
  readonly entered: number;
  /** Cells that could not be entered, with the reason in words. */
  readonly failed: readonly { readonly address: string; readonly why: string }[];
}

/**
 * Enters every FOOT formula that shows #NAME? once more. Sheets protected without a password are opened for it and
 * protected again as they were.
 */
export const enterAgain = (): Promise<EnteredAgain> =>
  Excel.run(async (context) => {
    const { worksheets } = context.workbook;
    worksheets.load("items/name");
    await context.sync();
    const failed: { address: string; why: string }[] = [];
    const ready: UnknownName[] = [];
    const protectAgain: (() => void)[] = [];
    for (const sheet of worksheets.items) {
      const cells = await unknownNames(context, sheet);
      if (cells.length === 0) continue;
      const protect = await opened(context, sheet);
      if (protect === undefined)
        failed.push(...cells.map(({ address }) => ({ address, why: words.health.protectedSheet })));
      else {
        ready.push(...cells);
        protectAgain.push(protect);
      }
    }
    const refused = await enterAll(context, ready);
    for (const protect of protectAgain) protect();
    await context.sync();
    return { entered: ready.length - refused.length, failed: [...failed, ...refused] };
  });

/** All of them at once; only where one is refused are they entered one by one, to know which. */
async function enterAll(context: Excel.RequestContext, cells: readonly UnknownName[]): Promise<EnteredAgain["failed"]> {
  const enter = ({ cell, formula }: UnknownName): void => {
    cell.formulas = [[formula]];
  };
  try {
    cells.forEach(enter);
    await context.sync();
    return [];
  } catch {
    const failed: { address: string; why: string }[] = [];
    for (const one of cells) {
      try {
        enter(one);
        await context.sync();
      } catch (error) {
        failed.push({ address: one.address, why: troubleInWords(error) });
      }
    }
    return failed;
  }
}

interface UnknownName {
  readonly address: string;
  readonly cell: Excel.Range;
  readonly formula: string;
}

async function unknownNames(context: Excel.RequestContext, sheet: Excel.Worksheet): Promise<readonly UnknownName[]> {
  const used = sheet.getUsedRangeOrNullObject(true);
  used.load("rowCount,columnCount");
  await context.sync();
  if (used.isNullObject) return [];
  const found: { cell: Excel.Range; formula: string }[] = [];
  for (const part of partsOf(used)) {
    part.load("values,formulas");
    await context.sync();
    for (const [row, values] of part.values.entries())
      for (const [column, value] of values.entries()) {
        const formula = value === "#NAME?" ? typedAgain(part.formulas[row]?.[column]) : undefined;
        if (formula !== undefined) found.push({ cell: part.getCell(row, column), formula });
      }
  }
  for (const { cell } of found) cell.load("address");
  await context.sync();
  return found.map(({ cell, formula }) => ({ address: cell.address, cell, formula }));
}

/** Lifts a protection that has no password. @returns what puts it back; undefined where it could not be lifted */
async function opened(
  context: Excel.RequestContext,
  { protection }: Excel.Worksheet,
): Promise<(() => void) | undefined> {
  protection.load("protected,options");
  await context.sync();
  if (!protection.protected) return () => {};
  const options = protection.options;
  try {
    protection.unprotect();
    await context.sync();
  } catch {
    return undefined;
  }
  return () => protection.protect(options);
}
