import { engineInNode } from "../hosts/headless/engineInNode.ts";
import { openWorkbook } from "../workbook/openWorkbook.ts";
import { type Recalculated, recalculate } from "../workbook/recalculate.ts";
import { authorWorkbook, type WorkbookPlan } from "./writing/authorWorkbook.ts";

/** Carries out a plan and works it out: the file holds every value, and formulas as Excel stores them. */
export const workedOut = async (plan: WorkbookPlan): Promise<Recalculated> =>
  recalculate(openWorkbook(await authorWorkbook(plan)), engineInNode());
