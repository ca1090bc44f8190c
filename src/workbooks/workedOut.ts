import { engineInNode } from "../hosts/headless/engineInNode.ts";
import { openWorkbook } from "../workbook/openWorkbook.ts";
import { type Recalculated, recalculate } from "../workbook/recalculate.ts";
import { authorWorkbook, type WorkbookPlan } from "./writing/authorWorkbook.ts";
import { spelledForCalc } from "./writing/spelledForCalc.ts";

/** Carries out a plan and works it out: the file holds every value, and formulas as Excel stores them. */
export async function workedOut(plan: WorkbookPlan): Promise<Recalculated> {
  const worked = await recalculate(openWorkbook(await authorWorkbook(plan)), engineInNode());
  return plan.edition === "libreoffice" ? { ...worked, bytes: spelledForCalc(worked.bytes) } : worked;
}
