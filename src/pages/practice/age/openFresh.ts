import type { Engine } from "../../../workbook/engine.ts";
import { openWorkbook } from "../../../workbook/openWorkbook.ts";
import { recalculate } from "../../../workbook/recalculate.ts";
import { savedAnswers } from "../../../workbook/savedAnswers.ts";
import type { Workbook } from "../../../workbook/workbook.ts";

/** A workbook with answers of which it is known what they are worth. */
export interface Fresh {
  readonly workbook: Workbook;
  readonly age: "worked out" | "of unknown age" | "no formulas";
  /** Cells that could not be worked out and keep the value they were saved with, with the reason. */
  readonly left: readonly string[];
}

/**
 * Opens a workbook, and works out all of it first where its saved answers cannot be shown.
 *
 * @param isWanted - whether it is to be worked out whatever was saved
 * @param beforeWork - waited for before the work begins, during which the page stands still
 * @throws WorkbookProblem with one sentence that says why it cannot be opened
 */
export async function openFresh(
  bytes: Uint8Array,
  engine: Engine,
  isWanted: boolean,
  beforeWork: () => Promise<void>,
): Promise<Fresh> {
  const workbook = openWorkbook(bytes);
  const saved = savedAnswers(workbook);
  // Whoever shows it refuses a workbook that counts from 1904, with a better sentence.
  if (workbook.dateSystem === 1904) return { workbook, age: "of unknown age", left: [] };
  if (saved === "no formulas" || (saved === "of unknown age" && !isWanted)) return { workbook, age: saved, left: [] };
  await beforeWork();
  const worked = await recalculate(workbook, engine, undefined, { all: isWanted });
  return {
    workbook: openWorkbook(worked.bytes),
    age: "worked out",
    left: worked.summary.left.map(({ sheet, address, reason }) => `${sheet} ${address}: ${reason}`),
  };
}
