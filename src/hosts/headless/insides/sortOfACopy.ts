import type { BaseValueObject } from "@univerjs/engine-formula";
import type { Registration } from "../bridge.ts";
import { engineArray } from "../engineArray.ts";
import { engineFunction } from "../engineFunction.ts";
import type { UniverParts } from "../univerParts.ts";

/** The engine's own SORT sorts the values of the range in place, where other formulas then read them. */
export function sortOfACopy(parts: UniverParts): Registration {
  class SortOfACopy extends engineFunction(parts, "SORT") {
    override calculate(array: BaseValueObject, ...others: BaseValueObject[]) {
      if (!array.isArray()) return super.calculate(array, ...others);
      const copy = engineArray(parts, [...array.getArrayValue()]);
      return super.calculate(copy, ...others);
    }
  }
  return [SortOfACopy, "SORT"];
}
