import { describe, expect, it } from "vitest";
import { Refusal } from "../../src/reading/kind.ts";
import {
  between,
  confidence,
  count,
  countFrom,
  daysBetween,
  innerShare,
  nonNegative,
  positive,
  share,
  wholeDays,
} from "../../src/reading/numbers.ts";

const read = (kind: { read: (cell: number, options: { dayOffset: number }) => number }, cell: number) =>
  kind.read(cell, { dayOffset: 0 });

describe("numbers that no flock has", () => {
  it.each([
    ["positive", positive("ml")],
    ["nonNegative", nonNegative("sheep-days")],
    ["share", share],
    ["innerShare", innerShare],
  ] as const)("%s takes none so small that a division by it runs out of numbers", (_, kind) => {
    for (const cell of [Number.MIN_VALUE, 1e-300, 9e-10])
      expect(() => read(kind, cell)).toThrow("is too small to be right");
    expect(read(kind, 1e-9)).toBe(1e-9);
  });

  it("take 0 where 0 is meant, and minus zero for 0", () => {
    for (const kind of [nonNegative("sheep-days"), share, count()])
      for (const zero of [0, -0]) expect(Object.is(read(kind, zero), 0)).toBe(true);
  });

  it.each([
    ["count", count(), 1_000_000_000],
    ["positive", positive("ml"), 1e15],
    ["nonNegative", nonNegative("sheep-days"), 1e15],
  ] as const)("%s takes none so large that sums lose digits", (_, kind, most) => {
    expect(read(kind, most)).toBe(most);
    expect(() => read(kind, most * 2)).toThrow("is too large to be right");
  });
});

describe("the ends of what is taken", () => {
  it.each([
    ["count", count(), [0, 12], [-1, 0.5]],
    ["countFrom", countFrom(2), [2, 3], [1, 2.5]],
    // A date in the place of days is above a hundred years of them.
    ["wholeDays", wholeDays, [0, 36_525], [-1, 36_526, 1.5]],
    ["daysBetween", daysBetween(1, 365), [1, 365], [0, 366, 1.5]],
    ["share", share, [0, 0.02, 1], [-0.01, 1.01, 2]],
    ["innerShare", innerShare, [0.02, 0.999], [0, 1, -0.5]],
    ["confidence", confidence, [0.5, 0.95, 0.9999], [0.49, 0.99991, 1, 95]],
    ["between", between(30, 5000, "a length"), [30, 5000], [29.9, 5000.1]],
    ["positive", positive("ml"), [0.05], [0, -1]],
    ["nonNegative", nonNegative("minutes"), [0, 0.5], [-0.5]],
  ] as const)("%s", (_, kind, taken, refused) => {
    for (const cell of taken) expect(read(kind, cell)).toBe(cell);
    for (const cell of refused) expect(() => read(kind, cell), String(cell)).toThrow(Refusal);
  });
});
