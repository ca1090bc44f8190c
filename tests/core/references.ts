import { readFileSync } from "node:fs";

/** One reference case: what goes in, what comes out. */
export type Case<In, Out> = readonly [arguments_: In, gives: Out];

/** The values a topic's make.py printed. */
export function references(topic: string): Record<string, readonly unknown[]> {
  const file = new URL(`../references/${topic}/values.json`, import.meta.url);
  return JSON.parse(readFileSync(file, "utf8"));
}

/** Those of the topic that the test is of, by the folder it stands in. */
export const ownReferences = (test: string): Record<string, readonly unknown[]> =>
  references(test.split("/").at(-2) ?? "");

/** The cases of one check; a check without cases is a mistake, not a pass. */
export function cases<In, Out>(values: Record<string, readonly unknown[]>, check: string): readonly Case<In, Out>[] {
  const found = values[check];
  if (!found || found.length === 0) throw new Error(`no reference values for ${check}`);
  return found as readonly Case<In, Out>[];
}
