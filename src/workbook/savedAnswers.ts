import { isCellError } from "../cells/cell.ts";
import { followsClock } from "./followsClock.ts";
import type { Workbook } from "./workbook.ts";
import { isYes } from "./xml/isYes.ts";
import { walkXml } from "./xml/walkXml.ts";

/** What the answers are worth that a workbook was saved with. */
export type SavedAnswers = "no formulas" | "not to be shown" | "of unknown age";

/**
 * Whether the answers in a file can be shown as they are.
 *
 * They cannot where the file itself asks for its formulas to be worked out, where a formula has no answer or one that
 * was given without these functions (`#NAME?`), and where they go by the clock. Of all others nobody knows how old they
 * are: programs that write cells often keep the answers that were there.
 */
export function savedAnswers(workbook: Workbook): SavedAnswers {
  let formulas = 0;
  for (const { rows } of workbook.sheets) {
    for (const { cells } of rows) {
      for (const { formula, value } of cells) {
        if (formula === undefined) continue;
        formulas += 1;
        if (value === null || (isCellError(value) && value.error === "#NAME?")) return "not to be shown";
      }
    }
  }
  if (formulas === 0) return "no formulas";
  return asksForIt(workbook) || followsClock(workbook) ? "not to be shown" : "of unknown age";
}

/** ECMA-376 Part 1 §18.2.2: it is to be worked out on loading, always as a whole, or was not when it was saved. */
function asksForIt({ part, files }: Workbook): boolean {
  let asks = false;
  walkXml(part, files.text(part), {
    open({ name, attributes: { fullCalcOnLoad, forceFullCalc, calcCompleted } }) {
      if (name !== "calcPr") return;
      asks = isYes(fullCalcOnLoad) || isYes(forceFullCalc) || !isYes(calcCompleted ?? "1");
    },
  });
  return asks;
}
