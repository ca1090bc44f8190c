import type { Nullable } from "@univerjs/core";
import type { ArrayValueObject, BaseValueObject } from "@univerjs/engine-formula";
import type { UniverParts } from "./univerParts.ts";

/** An array of the engine's own values, which stands in no sheet. */
export const engineArray = ({ formula }: UniverParts, values: Nullable<BaseValueObject>[][]): ArrayValueObject =>
  formula.ArrayValueObject.create({
    calculateValueList: values,
    rowCount: values.length,
    columnCount: values[0]?.length ?? 0,
    unitId: "",
    sheetId: "",
    row: -1,
    column: -1,
  });
