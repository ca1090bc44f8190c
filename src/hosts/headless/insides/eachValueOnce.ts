import type {
  ArrayValueObject,
  BaseReferenceObject,
  BaseValueObject,
  FunctionVariantType,
} from "@univerjs/engine-formula";
import type { Registration } from "../bridge.ts";
import { engineArray } from "../engineArray.ts";
import { engineFunction } from "../engineFunction.ts";
import type { UniverParts } from "../univerParts.ts";

// The place of the argument of which many values may be given.
const asked = { COUNTIF: 1, VLOOKUP: 0 } as const;

/**
 * COUNTIF and VLOOKUP for many values at once, each different value once: a column of records holds a few groups and
 * medicines again and again, and the engine goes through the whole list for each row.
 */
export function eachValueOnce(parts: UniverParts): readonly Registration[] {
  return Object.entries(asked).map(([name, at]): Registration => {
    class EachValueOnce extends engineFunction(parts, name) {
      override calculate(...given: BaseValueObject[]): FunctionVariantType {
        const own = (...changed: BaseValueObject[]) => super.calculate(...changed) as FunctionVariantType;
        const argument: FunctionVariantType | undefined = given[at];
        const many = argument?.isReferenceObject()
          ? (argument as unknown as BaseReferenceObject).toArrayValueObject()
          : argument;
        if (!many?.isArray()) return own(...given);
        const rows = many.getArrayValue();
        const different = new Map<string, BaseValueObject>();
        for (const value of rows.flat()) if (value) different.set(keyOf(value), value);
        const count = rows.length * (rows[0]?.length ?? 0);
        // A single value may be answered otherwise than as a list.
        if (different.size < 2 || different.size === count || rows.flat().some((value) => !value)) return own(...given);
        const column = engineArray(
          parts,
          [...different.values()].map((value) => [value]),
        );
        const once = own(...given.map((value, place) => (place === at ? column : value))) as ArrayValueObject;
        if (!once.isArray() || once.getRowCount() !== different.size || once.getColumnCount() !== 1)
          return own(...given);
        const answers = once.getArrayValue();
        const places = new Map([...different.keys()].map((key, place) => [key, answers[place]?.[0]]));
        return engineArray(
          parts,
          rows.map((line) => line.map((value) => places.get(keyOf(value as BaseValueObject)) as BaseValueObject)),
        );
      }
    }
    return [EachValueOnce, name];
  });
}

const keyOf = (value: BaseValueObject): string => {
  const kind = value.isNull() ? "blank" : value.isError() ? "error" : typeof value.getValue();
  return `${kind} ${String(value.getValue())}`;
};
