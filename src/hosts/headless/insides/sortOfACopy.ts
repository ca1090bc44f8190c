import type { BaseValueObject } from "@univerjs/engine-formula";
import type { FunctionName, Registration } from "../bridge.ts";
import type { UniverParts } from "../univerParts.ts";

/** The engine's own SORT sorts the values of the range in place, where other formulas then read them. */
export function sortOfACopy({ formula }: UniverParts): Registration {
  const { ArrayValueObject, functionLookup } = formula;
  const found = functionLookup.find(([, name]) => String(name) === "SORT");
  if (!found) throw new Error("the engine has no SORT");
  const Sort = found[0] as unknown as new (name: FunctionName) => InstanceType<typeof formula.BaseFunction>;

  class SortOfACopy extends Sort {
    override calculate(array: BaseValueObject, ...others: BaseValueObject[]) {
      if (!array.isArray()) return super.calculate(array, ...others);
      const values = [...array.getArrayValue()];
      const copy = ArrayValueObject.create({
        calculateValueList: values,
        rowCount: values.length,
        columnCount: values[0]?.length ?? 0,
        unitId: "",
        sheetId: "",
        row: -1,
        column: -1,
      });
      return super.calculate(copy, ...others);
    }
  }
  return [SortOfACopy, "SORT"];
}
