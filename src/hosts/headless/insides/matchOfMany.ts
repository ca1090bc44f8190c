import type { BaseValueObject, FunctionVariantType } from "@univerjs/engine-formula";
import type { Cell } from "../../../cells/cell.ts";
import type { Registration } from "../bridge.ts";
import { engineArray } from "../engineArray.ts";
import { engineFunction } from "../engineFunction.ts";
import { keysOf, wildcard } from "../evaluator/criteria.ts";
import type { UniverParts } from "../univerParts.ts";
import { argumentCells } from "./argumentCells.ts";

/**
 * MATCH for many values at once and exactly, in which the engine goes through the whole list for each value: a second for
 * 5,000 values in 5,000. Equal is what the evaluator of whole workbooks takes for equal.
 */
export function matchOfMany(parts: UniverParts): Registration {
  const { ErrorType, ErrorValueObject, NumberValueObject } = parts.formula;

  class MatchOfMany extends engineFunction(parts, "MATCH") {
    override calculate(...given: BaseValueObject[]): FunctionVariantType {
      const [wanted, list, kind] = given;
      const isExact = kind?.isNumber() === true && kind.getValue() === 0;
      if (!wanted?.isArray() || !list?.isArray() || !isExact) return super.calculate(...given) as FunctionVariantType;
      const [keys, rows] = [cellsOf(wanted), cellsOf(list)];
      const cells = rows.length === 1 ? rows[0] : rows.every((row) => row.length === 1) ? rows.flat() : undefined;
      if (!cells) return super.calculate(...given) as FunctionVariantType;
      const placeOf = placesIn(cells);
      const answers = keys.map((line, row) =>
        line.map((key, column) => {
          const own = wanted.getArrayValue()[row]?.[column];
          if (own?.isError()) return own;
          const place = placeOf(key ?? 0);
          return place === undefined ? ErrorValueObject.create(ErrorType.NA) : NumberValueObject.create(place + 1);
        }),
      );
      return engineArray(parts, answers);
    }
  }
  return [MatchOfMany, "MATCH"];
}

const cellsOf = (array: BaseValueObject): readonly (readonly Cell[])[] => {
  const cells = argumentCells(array);
  return Array.isArray(cells) ? (cells as readonly (readonly Cell[])[]) : [[cells as Cell]];
};

/** Finds the first place of a value in a list. */
function placesIn(cells: readonly Cell[]): (wanted: Cell) => number | undefined {
  const places = new Map<string, number>();
  for (const [place, cell] of cells.entries()) {
    const [key] = keysOf(cell);
    if (key !== undefined && !places.has(key)) places.set(key, place);
  }
  return (wanted) => {
    if (typeof wanted === "string" && /[*?~]/.test(wanted)) {
      const fits = wildcard(wanted);
      const place = cells.findIndex((cell) => typeof cell === "string" && fits(cell));
      return place < 0 ? undefined : place;
    }
    return places.get(keysOf(wanted)[0] ?? "");
  };
}
