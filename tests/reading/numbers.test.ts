import { describe, expect, it } from "vitest";
import { count, innerShare, nonNegative, positive, share } from "../../src/reading/numbers.ts";

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
