import { expect } from "vitest";
import type { Brought } from "../../../src/workbooks/bring/bringRecords.ts";

/** Rows in are rows out and rows named, in every place. */
export function expectNothingDropped({ places, leftBehind }: Brought): void {
  const total = (numbers: readonly number[]): number => numbers.reduce((sum, number) => sum + number, 0);
  expect(total(places.map(({ rowsIn }) => rowsIn))).toBe(
    total(places.map(({ rowsOut }) => rowsOut)) + total(leftBehind.map(({ rows }) => rows.length)),
  );
}
