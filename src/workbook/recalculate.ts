import type { Engine } from "./engine.ts";
import { saveWorkbook } from "./saving/saveWorkbook.ts";
import { type Summary, summarize } from "./summary.ts";
import type { Workbook } from "./workbook.ts";
import { type WorkingOut, workOut } from "./workOut.ts";

export interface Recalculated {
  /** The file with fresh values. */
  readonly bytes: Uint8Array;
  readonly summary: Summary;
}

/**
 * Works out the formulas of a workbook that need it, and writes the answers into a copy of its file.
 *
 * @param onStage - told before each stage, for those who show progress
 */
export async function recalculate(
  workbook: Workbook,
  engine: Engine,
  onStage: (stage: "calculating" | "saving") => void = () => undefined,
  working: WorkingOut = {},
): Promise<Recalculated> {
  onStage("calculating");
  const workedOut = await workOut(workbook, engine, working);
  onStage("saving");
  const { bytes, ...saved } = saveWorkbook(workbook, workedOut);
  return { bytes, summary: summarize(workbook, workedOut, saved) };
}
