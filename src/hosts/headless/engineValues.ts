import type { BaseValueObject } from "@univerjs/engine-formula";
import type { Cell } from "../../cells/cell.ts";
import type { UniverParts } from "./univerParts.ts";

/** How cells are handed to the engine, alone and as an array. */
export function engineValues({ formula }: UniverParts) {
  const {
    ArrayValueObject,
    BooleanValueObject,
    ErrorValueObject,
    NullValueObject,
    NumberValueObject,
    StringValueObject,
  } = formula;
  const toEngine = (cell: Cell): BaseValueObject => {
    if (typeof cell === "number") return NumberValueObject.create(cell);
    if (typeof cell === "string") return StringValueObject.create(cell);
    if (typeof cell === "boolean") return BooleanValueObject.create(cell);
    if (cell === null) return NullValueObject.create();
    return ErrorValueObject.create(cell.error as Parameters<typeof ErrorValueObject.create>[0]);
  };
  const toArray = (grid: readonly (readonly Cell[])[]): BaseValueObject =>
    ArrayValueObject.create({
      calculateValueList: grid.map((line) => line.map(toEngine)),
      rowCount: grid.length,
      columnCount: grid[0]?.length ?? 0,
      unitId: "",
      sheetId: "",
      row: -1,
      column: -1,
    });
  return { toEngine, toArray };
}
