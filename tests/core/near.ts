import { expect } from "vitest";

/** Holds a value to a reference within a relative error; a reference of 0 is held to exactly. */
export function expectNear(found: number, reference: number, relative: number, what = ""): void {
  const error = reference === 0 ? Math.abs(found) : Math.abs(found - reference) / Math.abs(reference);
  expect(error, `${what} found ${found}, reference ${reference}`).toBeLessThanOrEqual(relative);
}
