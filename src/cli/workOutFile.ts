import { usualLimits } from "../workbook/limits.ts";
import { openWorkbook } from "../workbook/openWorkbook.ts";
import { type Recalculated, recalculate } from "../workbook/recalculate.ts";
import type { Workbook } from "../workbook/workbook.ts";
import { WorkbookProblem } from "../workbook/workbookProblem.ts";
import type { WorkingOut } from "../workbook/workOut.ts";
import { BadInput } from "./badInput.ts";
import type { Terminal } from "./command.ts";
import { nodePacking } from "./nodePacking.ts";
import { readOrdinary } from "./readOrdinary.ts";

/**
 * Opens a workbook file and works it out. Nothing is written.
 *
 * @throws BadInput or WorkbookProblem when the file cannot be worked with
 */
export async function workOutFile(
  input: string,
  { progress, progressDone }: Terminal,
  working: WorkingOut = {},
): Promise<Recalculated> {
  progress(`Reading ${input} …`);
  const bytes = await readOrdinary(input, `${input} cannot be read`);
  const workbook = opened(input, bytes);
  // The engine takes half a second to load, so only a workbook that opens pays for it.
  const { engineInNode } = await import("../hosts/headless/engineInNode.ts");
  const stages = { calculating: "Working out the formulas …", saving: "Putting the answers into the file …" };
  const recalculated = await recalculate(workbook, engineInNode(), (stage) => progress(stages[stage]), working);
  progressDone();
  return recalculated;
}

function opened(input: string, bytes: Uint8Array): Workbook {
  try {
    return openWorkbook(bytes, usualLimits, nodePacking);
  } catch (error) {
    if (error instanceof WorkbookProblem) throw new BadInput(`${input} cannot be worked out. ${error.message}`);
    throw error;
  }
}
