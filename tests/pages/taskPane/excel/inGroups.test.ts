import { expect, it } from "vitest";
import { inGroups } from "../../../../src/pages/taskPane/excel/inGroups.ts";

const groups = (weights: readonly number[]) => inGroups(weights, (weight) => weight, 10);

it.each([
  [[], []],
  [
    [4, 6, 1],
    [[4, 6], [1]],
  ],
  [
    [1, 12, 1, 9],
    [[1], [12], [1, 9]],
  ],
  [
    [0, 10, 0, 1],
    [[0, 10, 0], [1]],
  ],
])("%j goes in %j", (weights, expected) => {
  expect(groups(weights)).toEqual(expected);
});
