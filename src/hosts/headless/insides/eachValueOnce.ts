import type {
  ArrayValueObject,
  BaseReferenceObject,
  BaseValueObject,
  FunctionVariantType,
} from "@univerjs/engine-formula";
import type { FunctionName, Registration } from "../bridge.ts";
import type { UniverParts } from "../univerParts.ts";

// The place of the argument of which many values may be given.
const asked = { COUNTIF: 1, VLOOKUP: 0 } as const;

/**
 * COUNTIF and VLOOKUP for many values at once, each different value once: a column of records holds a few groups and
 * medicines again and again, and the engine goes through the whole list for each row.
 */
export function eachValueOnce({ formula }: UniverParts): readonly Registration[] {
  const { functionLookup, functionStatistical } = formula;
  const arrayOf = (values: BaseValueObject[][]) =>
    formula.ArrayValueObject.create({
      calculateValueList: values,
      rowCount: values.length,
      columnCount: values[0]?.length ?? 0,
      unitId: "",
      sheetId: "",
      row: -1,
      column: -1,
    });
  return Object.entries(asked).map(([name, at]): Registration => {
    const found = [...functionLookup, ...functionStatistical].find(([, known]) => String(known) === name);
    if (!found) throw new Error(`the engine has no ${name}`);
    const Own = found[0] as unknown as new (name: FunctionName) => InstanceType<typeof formula.BaseFunction>;

    class EachValueOnce extends Own {
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
        const column = arrayOf([...different.values()].map((value) => [value]));
        const once = own(...given.map((value, place) => (place === at ? column : value))) as ArrayValueObject;
        if (!once.isArray() || once.getRowCount() !== different.size || once.getColumnCount() !== 1)
          return own(...given);
        const answers = once.getArrayValue();
        const places = new Map([...different.keys()].map((key, place) => [key, answers[place]?.[0]]));
        return arrayOf(
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
