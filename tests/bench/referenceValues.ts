import { readFileSync } from "node:fs";

type Reference = readonly (readonly [readonly [number, number, number], number | readonly [number, number]])[];

/** The values of tests/references/bench, in 40-digit arithmetic. */
const references: Readonly<Record<string, Reference>> = JSON.parse(
  readFileSync("tests/references/bench/values.json", "utf8"),
);

export interface ReferenceCase {
  readonly given: readonly [number, number, number];
  readonly value: readonly [number, number];
}

/** The cases of one check; a single value comes as the first of two. */
export function referenceCases(name: "exact" | "sample" | "funnel"): readonly ReferenceCase[] {
  return (references[name] ?? []).map(([given, value]) => ({
    given,
    value: typeof value === "number" ? [value, Number.NaN] : value,
  }));
}
