import { appendFileSync } from "node:fs";
import { join } from "node:path";
import { expect } from "vitest";

/** Holds a value to a reference within a relative error; a reference of 0 is held to exactly. */
export function expectNear(found: number, reference: number, relative: number, what = ""): void {
  const error = reference === 0 ? Math.abs(found) : Math.abs(found - reference) / Math.abs(reference);
  keep(error, relative);
  expect(error, `${what} found ${found}, reference ${reference}`).toBeLessThanOrEqual(relative);
}

/** Where tests/references/largestErrors.ts wants to know how near the values came. */
const folder = process.env.SOUNDFOLD_ERRORS;

function keep(error: number, allowed: number): void {
  if (folder === undefined) return;
  const { currentTestName, testPath } = expect.getState();
  const line = JSON.stringify({ test: currentTestName, file: testPath, error, allowed });
  appendFileSync(join(folder, `${process.pid}.jsonl`), `${line}\n`);
}
