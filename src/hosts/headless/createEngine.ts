import type { AnyFunction } from "../../definition/defineFunction.ts";
import type { Engine } from "../../workbook/engine.ts";
import type { Clock } from "../localClock.ts";
import { calculateWorkbook } from "./evaluator/calculateWorkbook.ts";
import { forms } from "./evaluator/forms.ts";
import { notWorkedOutHere } from "./evaluator/notWorkedOutHere.ts";
import { refuseUnclearDates } from "./insides/refuseUnclearDates.ts";
import { todayAndNow } from "./insides/todayAndNow.ts";
import type { UniverParts } from "./univerParts.ts";

/** Known beyond the library's functions. */
const inGrammar = ["LET", "LAMBDA", "SINGLE", "ANCHORARRAY"];

/**
 * Works out workbooks with every worksheet function: formulas are read, put in order and worked out here, with the
 * functions of the embedded spreadsheet as the library. Nothing of one workbook reaches another.
 */
export function createEngine(catalogue: readonly AnyFunction[], parts: UniverParts, clock: Clock): Engine {
  refuseUnclearDates(parts);
  const known = new Set<string>(
    [...(parts.formula.ALL_IMPLEMENTED_FUNCTIONS_SET as ReadonlySet<string>), ...forms.keys(), ...inGrammar].filter(
      (name) => !notWorkedOutHere.has(name),
    ),
  );
  return {
    knows: (name) => known.has(name),
    footNames: catalogue.map(({ name }) => name),
    async calculate(workbook) {
      // Read once, so that all of a workbook is worked out at one moment, even across midnight.
      const now = clock();
      return calculateWorkbook(
        workbook,
        catalogue,
        parts,
        todayAndNow(parts, () => now),
      );
    },
  };
}
