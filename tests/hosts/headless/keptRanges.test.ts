import { expect, test } from "vitest";
import type { Cells } from "../../../src/cells/cell.ts";
import { keptRanges } from "../../../src/hosts/headless/keptRanges.ts";

const column = (rows: number): Cells => Array.from({ length: rows }, (_, row) => [row]);

test("ranges are kept until their cells are too many; then the one not asked for longest goes", () => {
  const ranges = keptRanges(10);
  const [a, b, c] = [column(4), column(4), column(4)];
  ranges.keep("a", a);
  ranges.keep("b", b);
  expect([ranges.get("b"), ranges.get("a")]).toEqual([b, a]);
  ranges.keep("c", c);
  expect([ranges.get("a"), ranges.get("b"), ranges.get("c")]).toEqual([a, undefined, c]);
});

test("a range of more cells than may be kept takes the place of all others", () => {
  const ranges = keptRanges(10);
  ranges.keep("a", column(4));
  const long = column(11);
  ranges.keep("long", long);
  expect([ranges.get("a"), ranges.get("long")]).toEqual([undefined, long]);
  const wide: Cells = [[1, 2, 3, 4]];
  ranges.keep("wide", wide);
  expect([ranges.get("long"), ranges.get("wide")]).toEqual([undefined, wide]);
});

test("a range for each row, each longer than the one before, never comes to more than may be kept", () => {
  const most = 5000;
  const ranges = keptRanges(most);
  const lengths = Array.from({ length: 1000 }, (_, place) => place + 1);
  for (const length of lengths) ranges.keep(`B2:B${length + 1}`, column(length));
  const still = lengths.filter((length) => ranges.get(`B2:B${length + 1}`) !== undefined);
  expect(still).toEqual([996, 997, 998, 999, 1000]);
});
