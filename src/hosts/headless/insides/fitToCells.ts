import type { BaseValueObject } from "@univerjs/engine-formula";
import type { Registration } from "../bridge.ts";
import { engineArray } from "../engineArray.ts";
import type { UniverParts } from "../univerParts.ts";

/** The name of the function that lays an array out over so many rows and columns. */
export const fitFunction = "SOUNDFOLD.FIT";

/**
 * An array formula of the old kind: its answer laid out over the cells it was entered in. A single value, row or
 * column repeats; what is too long is cut; what is too short ends in #N/A.
 */
export function fitToCells(parts: UniverParts): Registration {
  const { BaseFunction, ErrorValueObject, NullValueObject } = parts.formula;
  const missing = () => ErrorValueObject.create("#N/A" as Parameters<typeof ErrorValueObject.create>[0]);

  class FitToCells extends BaseFunction {
    override calculate(answer: BaseValueObject, height: BaseValueObject, width: BaseValueObject) {
      const given = answer.isArray() ? answer.getArrayValue() : [[answer]];
      const [rows, columns] = [Number(height.getValue()), Number(width.getValue())];
      const columnsGiven = given[0]?.length ?? 0;
      const at = (row: number, column: number): BaseValueObject => {
        const line = given[given.length === 1 ? 0 : row];
        const index = columnsGiven === 1 ? 0 : column;
        if (!line || index >= columnsGiven) return missing();
        return line[index] ?? NullValueObject.create();
      };
      if (rows === 1 && columns === 1) return at(0, 0);
      return engineArray(
        parts,
        Array.from({ length: rows }, (_, row) => Array.from({ length: columns }, (__, column) => at(row, column))),
      );
    }
  }
  return [FitToCells, fitFunction];
}
