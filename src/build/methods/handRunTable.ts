import { readFileSync } from "node:fs";

/** A table by simulation, which takes too long to be made each time: written by tests/references/gathers/coverage.ts. */
export const handRunTable = (name: string) => (): string =>
  readFileSync(new URL(`../../../tests/references/gathers/${name}.md`, import.meta.url), "utf8").trimEnd();
