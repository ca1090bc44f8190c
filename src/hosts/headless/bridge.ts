import type { BaseFunction, FunctionVariantType } from "@univerjs/engine-formula";
import type { AnyFunction } from "../../definition/defineFunction.ts";
import { evaluate } from "../../definition/evaluate.ts";
import type { Format } from "../../writing/format.ts";
import { engineValues } from "./engineValues.ts";
import { argumentCells } from "./insides/argumentCells.ts";
import type { UniverParts } from "./univerParts.ts";

/** The cell that a function is worked out for. */
interface CallPlace {
  readonly sheetId: string;
  readonly row: number;
  readonly column: number;
}

/** Hears what each call came to, since the engine keeps values and error codes only. */
export interface Listener {
  readonly dateSystem: () => 1900 | 1904;
  readonly refused?: (place: CallPlace, message: string) => void;
  readonly answered?: (place: CallPlace, shown: { formats: readonly Format[]; headings: boolean }) => void;
}

/** What the engine is given to register: a class and the name it is typed by. */
export type Registration = readonly [new (name: FunctionName) => BaseFunction, string];

/** The engine's type for names knows its own functions only. */
export type FunctionName = ConstructorParameters<typeof BaseFunction>[0];

/**
 * A worksheet function for the engine. The engine's simpler ways of adding a function turn blanks into 0,
 * which would count a sheep that was not scored as a sound one; so its function class is extended.
 */
export function bridge(definition: AnyFunction, parts: UniverParts, listener: Listener): Registration {
  const { BaseFunction, ErrorValueObject } = parts.formula;
  const { toEngine, toArray } = engineValues(parts);

  class WorksheetFunction extends BaseFunction {
    override needsReferenceObject = true;

    override calculate(...given: FunctionVariantType[]) {
      const place = { sheetId: this.subUnitId ?? "", row: this.row, column: this.column };
      const outcome = evaluate(definition, given.map(argumentCells), { dateSystem: listener.dateSystem() });
      if (!outcome.ok) {
        listener.refused?.(place, outcome.message);
        return ErrorValueObject.create(outcome.code as Parameters<typeof ErrorValueObject.create>[0], outcome.message);
      }
      listener.answered?.(place, outcome);
      // A blank in an answer is an empty text: as a blank the engine would show 0.
      const cells = outcome.cells.map((row) => row.map((cell) => cell ?? ""));
      const [first = [""]] = cells;
      return cells.length === 1 && first.length === 1 ? toEngine(first[0] ?? "") : toArray(cells);
    }
  }
  return [WorksheetFunction, `FOOT.${definition.name}`];
}
