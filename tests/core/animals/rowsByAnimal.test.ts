import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { notMet, rowsByAnimal } from "../../../src/core/animals/rowsByAnimal.ts";

const records = fc.array(fc.tuple(fc.constantFrom(..."abc"), fc.integer({ min: 0, max: 60 })), { maxLength: 150 });

/** The same by sorting all rows at once. */
function byHand(list: readonly (readonly [string, number])[], wanted: readonly string[]): number[][] {
  const names = [...new Set(list.map(([name]) => name))].filter((name) => wanted.includes(name));
  return names.map((name) =>
    list
      .map((_, row) => row)
      .filter((row) => list[row]?.[0] === name)
      .sort((a, b) => (list[a]?.[1] ?? 0) - (list[b]?.[1] ?? 0) || a - b),
  );
}

describe("rowsByAnimal", () => {
  it.each([["abc"], ["ac"]])("puts the rows of %s in order of day, however many an animal has", (wanted) => {
    fc.assert(
      fc.property(records, (list) => {
        const animals = wanted === "abc" ? undefined : new Map([...wanted].map((name) => [name, notMet] as const));
        const { order, starts, firstRow } = rowsByAnimal(
          list.map(([name]) => ({ key: name, shown: name })),
          list.map(([, day]) => day),
          animals,
        );
        const found = Array.from(firstRow, (_, animal) => [...order.subarray(starts[animal], starts[animal + 1])]);
        expect(found).toEqual(byHand(list, [...wanted]));
        if (animals)
          firstRow.forEach((row, animal) => {
            expect(animals.get(list[row]?.[0] as string)).toBe(animal);
          });
      }),
    );
  });
});
