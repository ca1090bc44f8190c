import type { Cell } from "./cell.ts";

// A decimal comma and a thousands comma look alike, so only the point is read.
const plainNumber = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?$/;

/**
 * The number in a cell, or undefined when there is none: real numbers, and text such as `"12"` or `" 3.5 "`.
 *
 * @example
 * numberIn(" 3.5 ") // → 3.5
 * numberIn("3,5") // → undefined
 */
export function numberIn(cell: Cell): number | undefined {
  // Adding 0 makes a minus zero a plain one, which else divides to minus infinity.
  if (typeof cell === "number") return Number.isFinite(cell) ? cell + 0 : undefined;
  if (typeof cell !== "string") return undefined;
  const text = cell.trim();
  if (!plainNumber.test(text)) return undefined;
  const value = Number(text);
  return Number.isFinite(value) ? value + 0 : undefined;
}
