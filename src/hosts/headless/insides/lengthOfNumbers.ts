import type { ArrayValueObject, BaseValueObject } from "@univerjs/engine-formula";
import type { Registration } from "../bridge.ts";
import { engineFunction } from "../engineFunction.ts";
import type { UniverParts } from "../univerParts.ts";

/**
 * LEN of a number or a date is that of the number, whatever the cell shows. The engine's own writes the number out as the
 * cell does first: 11 for 14 Mar 2026 in place of 5, and for a column of dates a fifth of the time of a whole run.
 */
export function lengthOfNumbers(parts: UniverParts): Registration {
  const { NumberValueObject, stripErrorMargin } = parts.formula;
  class LengthOfNumbers extends engineFunction(parts, "LEN") {
    override calculate(text: BaseValueObject) {
      const lengthOf = (value: BaseValueObject): BaseValueObject =>
        value.isNumber()
          ? NumberValueObject.create(String(stripErrorMargin(Number(value.getValue()))).length)
          : (super.calculate(value) as BaseValueObject);
      if (!text.isArray()) return lengthOf(text);
      const lengths = (text as ArrayValueObject).mapValue(lengthOf) as ArrayValueObject;
      return lengths.getRowCount() === 1 && lengths.getColumnCount() === 1
        ? (lengths.get(0, 0) as BaseValueObject)
        : lengths;
    }
  }
  return [LengthOfNumbers, "LEN"];
}
