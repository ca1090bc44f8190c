import { engineInNode } from "../hosts/headless/engineInNode.ts";
import { usualLimits } from "../workbook/limits.ts";
import { openWorkbook } from "../workbook/openWorkbook.ts";
import { type Recalculated, recalculate } from "../workbook/recalculate.ts";
import type { Packing } from "../workbook/zip/packing.ts";
import { authorWorkbook, type WorkbookPlan } from "./writing/authorWorkbook.ts";
import { spelledForCalc } from "./writing/spelledForCalc.ts";

/**
 * Carries out a plan and works it out: the file holds every value, and formulas as Excel stores them.
 *
 * @param packing - what packs it, where it is not to be the library, whose bytes are the same everywhere
 */
export async function workedOut(plan: WorkbookPlan, packing?: Packing): Promise<Recalculated> {
  const opened = openWorkbook(await authorWorkbook(plan), usualLimits, packing);
  const worked = await recalculate(opened, engineInNode());
  return plan.edition === "libreoffice" ? { ...worked, bytes: spelledForCalc(worked.bytes) } : worked;
}
