import type { BaseValueObject } from "@univerjs/engine-formula";
import type { Cell } from "../../cells/cell.ts";
import { engineArray } from "./engineArray.ts";
import type { UniverParts } from "./univerParts.ts";

/** How cells are handed to the engine, alone and as an array. */
export function engineValues(parts: UniverParts) {
  const { BooleanValueObject, ErrorValueObject, NullValueObject, NumberValueObject, StringValueObject } = parts.formula;
  const toEngine = (cell: Cell): BaseValueObject => {
    if (typeof cell === "number") return NumberValueObject.create(cell);
    if (typeof cell === "string") return StringValueObject.create(cell);
    if (typeof cell === "boolean") return BooleanValueObject.create(cell);
    if (cell === null) return NullValueObject.create();
    return ErrorValueObject.create(cell.error as Parameters<typeof ErrorValueObject.create>[0]);
  };
  const toArray = (grid: readonly (readonly Cell[])[]): BaseValueObject =>
    engineArray(
      parts,
      grid.map((line) => line.map(toEngine)),
    );
  return { toEngine, toArray };
}
