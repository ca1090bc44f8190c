import fc from "fast-check";
import { expect, it } from "vitest";
import type { Cell } from "../../../src/cells/cell.ts";
import { CellStore } from "../../../src/hosts/headless/evaluator/cellStore.ts";
import { compareCells } from "../../../src/hosts/headless/evaluator/operators.ts";
import { countBefore, SortedNumbers } from "../../../src/hosts/headless/evaluator/sortedNumbers.ts";

const noRows: ReadonlySet<number> = new Set();

function storeOf(cells: readonly Cell[]): CellStore {
  const store = new CellStore([{ hidden: noRows, filtered: noRows }], 1e9);
  cells.forEach((cell, row) => {
    store.put(0, row, 0, cell);
  });
  return store;
}

const areaOf = (bottom: number) => ({ sheet: 0, area: { top: 0, left: 0, bottom, right: 0 } });

// Such as differ beyond the 15th digit are one number to a spreadsheet.
const number = fc.oneof(fc.integer({ min: -5, max: 5 }), fc.constantFrom(0.1 + 0.2, 0.3, -1 / 3, 1e15, 2 ** -60));
const cell: fc.Arbitrary<Cell> = fc.oneof(
  { weight: 5, arbitrary: number },
  fc.constantFrom(null, "", "3", "ewe", true, false),
);

it("counts as by looking at every cell, to the 15 digits that a spreadsheet compares", () => {
  fc.assert(
    fc.property(fc.array(cell, { minLength: 1, maxLength: 30 }), number, (cells, value) => {
      const { numbers } = new SortedNumbers(storeOf(cells)).of(areaOf(cells.length - 1));
      const all = cells.filter((one) => typeof one === "number");
      expect([...numbers]).toHaveLength(all.length);
      expect(countBefore(numbers, (other) => compareCells(other, value) >= 0)).toBe(
        all.filter((one) => compareCells(one, value) < 0).length,
      );
      expect(countBefore(numbers, (other) => compareCells(other, value) > 0)).toBe(
        all.filter((one) => compareCells(one, value) <= 0).length,
      );
    }),
  );
});

it("gives the first error row by row, and reads anew what it was told to forget", () => {
  const store = storeOf([1, { error: "#N/A" }, { error: "#REF!" }]);
  const sorted = new SortedNumbers(store);
  expect(sorted.of(areaOf(2)).error).toEqual({ error: "#N/A" });
  store.put(0, 1, 0, 7);
  expect(sorted.of(areaOf(2)).error).toEqual({ error: "#N/A" });
  sorted.forget();
  expect(sorted.of(areaOf(2)).error).toEqual({ error: "#REF!" });
  expect([...sorted.of(areaOf(1)).numbers]).toEqual([1, 7]);
});
