import type { BaseValueObject } from "@univerjs/engine-formula";
import type { FunctionName, Registration } from "../bridge.ts";
import type { UniverParts } from "../univerParts.ts";

/**
 * DAY, MONTH and YEAR of a date that is written as text. The engine's own take the local midnight of 2026/03/14 and
 * read it off in Greenwich, which east of it gives the 13th.
 */
export function partsOfDates({ formula }: UniverParts): readonly Registration[] {
  const { StringValueObject, functionDate } = formula;
  const asSerial = (value: BaseValueObject): BaseValueObject => {
    if (value.isArray()) return (value as unknown as ArrayLike).mapValue(asSerial);
    return value instanceof StringValueObject ? value.convertToNumberObjectValue() : value;
  };

  return ["DAY", "MONTH", "YEAR"].map((name): Registration => {
    const found = functionDate.find(([, known]) => String(known) === name);
    if (!found) throw new Error(`the engine has no ${name}`);
    const Own = found[0] as unknown as new (name: FunctionName) => InstanceType<typeof formula.BaseFunction>;

    class PartOfDate extends Own {
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
