import type {
  BaseReferenceObject,
  BaseValueObject,
  FunctionVariantType,
  IFormulaRuntimeService,
} from "@univerjs/engine-formula";
import { afterFunction, fitFunction } from "../../workbook/workOut.ts";
import type { Registration } from "./bridge.ts";
import type { UniverParts } from "./univerParts.ts";

/** `A1#`, which the engine gets wrong: the cells that the formula in A1 fills, as worked out in this run. */
export function spilledRange({ formula }: UniverParts, runtime: () => IFormulaRuntimeService): Registration {
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
      const area = runtime().getUnitArrayFormula()[unit]?.[sheet]?.[startRow]?.[startColumn];
      if (!area) return referenceError();
      const range = new RangeReferenceObject(area);
      range.setDefaultUnitId(unit);
      range.setDefaultSheetId(sheet);
      return range;
    }
  }
  return [SpilledRange as unknown as Registration[0], "ANCHORARRAY"];
}

/** Gives its first argument; the others are there so that the engine works them out before. */
export function afterOthers({ formula }: UniverParts): Registration {
  class AfterOthers extends formula.BaseFunction {
    override needsReferenceObject = true;

    override calculate(answer: FunctionVariantType) {
      return answer as BaseValueObject;
    }
  }
  return [AfterOthers as unknown as Registration[0], afterFunction];
}

/** The engine's own SORT sorts the values of the range in place, where other formulas then read them. */
export function sortOfACopy({ formula }: UniverParts): Registration {
  const { ArrayValueObject, functionLookup } = formula;
  const found = functionLookup.find(([, name]) => String(name) === "SORT");
  if (!found) throw new Error("the engine has no SORT");
  const Sort = found[0] as unknown as new (name: string) => InstanceType<typeof formula.BaseFunction>;

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

/**
 * An array formula of the old kind: its answer laid out over the cells it was entered in. A single value, row or
 * column repeats; what is too long is cut; what is too short ends in #N/A.
 */
export function fitToCells({ formula }: UniverParts): Registration {
  const { ArrayValueObject, BaseFunction, ErrorValueObject, NullValueObject } = formula;
  const missing = () => ErrorValueObject.create("#N/A" as Parameters<typeof ErrorValueObject.create>[0]);

  class FitToCells extends BaseFunction {
    override calculate(answer: BaseValueObject, height: BaseValueObject, width: BaseValueObject) {
      const given = answer.isArray() ? answer.getArrayValue() : [[answer]];
      const [rows, columns] = [Number(height.getValue()), Number(width.getValue())];
      const columnsGiven = given[0]?.length ?? 0;
      const at = (row: number, column: number): BaseValueObject => {
        const line = given[given.length === 1 ? 0 : row];
        const place = columnsGiven === 1 ? 0 : column;
        if (!line || place >= columnsGiven) return missing();
        return line[place] ?? NullValueObject.create();
      };
      if (rows === 1 && columns === 1) return at(0, 0);
      return ArrayValueObject.create({
        calculateValueList: Array.from({ length: rows }, (_, row) =>
          Array.from({ length: columns }, (__, column) => at(row, column)),
        ),
        rowCount: rows,
        columnCount: columns,
        unitId: "",
        sheetId: "",
        row: -1,
        column: -1,
      });
    }
  }
  return [FitToCells as unknown as Registration[0], fitFunction];
}
