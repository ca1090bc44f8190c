import type {
  BaseReferenceObject,
  FormulaDataModel,
  FunctionVariantType,
  IFormulaRuntimeService,
} from "@univerjs/engine-formula";
import type { Registration } from "../bridge.ts";
import type { UniverParts } from "../univerParts.ts";

/** `A1#`, which the engine gets wrong: the cells that the formula in A1 fills, in this run or before. */
export function spilledRange(
  { formula }: UniverParts,
  runtime: () => IFormulaRuntimeService,
  before: () => FormulaDataModel,
): Registration {
  const { BaseFunction, ErrorValueObject, RangeReferenceObject } = formula;
  const referenceError = () => ErrorValueObject.create("#REF!" as Parameters<typeof ErrorValueObject.create>[0]);

  class SpilledRange extends BaseFunction {
    override needsReferenceObject = true;

    override calculate(anchor: FunctionVariantType) {
      if (!anchor?.isReferenceObject()) return referenceError();
      const reference = anchor as BaseReferenceObject;
      const { startRow, startColumn } = reference.getRangePosition();
      const [unit, sheet] = [reference.getUnitId(), reference.getSheetId()];
      const own = runtime().getUnitData()[unit]?.[sheet]?.getValue(startRow, startColumn);
      // The engine names the area of a blocked formula too.
      if (own?.v === "#SPILL!") return reference.getCellValueObject(own);
      const areas = own ? runtime().getUnitArrayFormula() : before().getArrayFormulaRange();
      const area = areas[unit]?.[sheet]?.[startRow]?.[startColumn];
      if (!area) return referenceError();
      const range = new RangeReferenceObject(area);
      range.setDefaultUnitId(unit);
      range.setDefaultSheetId(sheet);
      return range;
    }
  }
  return [SpilledRange, "ANCHORARRAY"];
}
