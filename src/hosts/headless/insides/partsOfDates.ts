import type { BaseValueObject } from "@univerjs/engine-formula";
import type { Registration } from "../bridge.ts";
import { engineFunction } from "../engineFunction.ts";
import type { UniverParts } from "../univerParts.ts";

/**
 * DAY, MONTH and YEAR of a date that is written as text. The engine's own take the local midnight of 2026/03/14 and
 * read it off in Greenwich, which east of it gives the 13th.
 */
export function partsOfDates(parts: UniverParts): readonly Registration[] {
  const { StringValueObject } = parts.formula;
  const asSerial = (value: BaseValueObject): BaseValueObject => {
    if (value.isArray()) return (value as unknown as ArrayLike).mapValue(asSerial);
    return value instanceof StringValueObject ? value.convertToNumberObjectValue() : value;
  };

  return ["DAY", "MONTH", "YEAR"].map((name): Registration => {
    class PartOfDate extends engineFunction(parts, name) {
      override calculate(date: BaseValueObject) {
        return super.calculate(asSerial(date));
      }
    }
    return [PartOfDate, name];
  });
}

interface ArrayLike {
  readonly mapValue: (change: (value: BaseValueObject) => BaseValueObject) => BaseValueObject;
}
