import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { catalogue } from "../../functions/catalogue.ts";
import { sources } from "../../functions/sources.ts";
import { Problem } from "../../src/cells/problem.ts";
import { chanceByMethod } from "../../src/core/planning/chanceByMethod.ts";
import { intervalMethods } from "../../src/core/statistics/proportionInterval.ts";
import { gatherLimits } from "../../src/core/watching/gatherLimits.ts";
import type { Parameter } from "../../src/reading/parameter.ts";

describe("the catalogue", () => {
  it("names every function once, in a form that no spreadsheet takes for a cell", () => {
    const names = catalogue.map((definition) => definition.name);
    expect(new Set(names).size).toBe(names.length);
    for (const name of names) {
      expect(name).toMatch(/^[A-Z][A-Z0-9]{2,63}$/);
      expect(name).not.toMatch(/^[A-Z]{1,3}[0-9]+$/);
    }
  });

  it("rests every source on a function that uses it", () => {
    const used = new Set(catalogue.flatMap((definition) => definition.sources));
    expect(Object.values(sources).filter((source) => !used.has(source))).toEqual([]);
  });
});

it.each([
  ["PREVRANGE", "method", Object.keys(intervalMethods)],
  ["LAMEWATCH", "limits", Object.keys(gatherLimits)],
  ["DETECTCHANCE", "method", Object.keys(chanceByMethod)],
])("%s offers every %s there is", (name, parameter, all) => {
  const parameters = catalogue.find((known) => known.name === name)?.parameters as Record<string, Parameter<unknown>>;
  expect(parameters[parameter]?.kind.words).toEqual(all);
});

it("keeps every function in the folder of its topic", () => {
  const folderOf = new Map(
    readdirSync("functions", { withFileTypes: true })
      .filter((entry) => entry.isDirectory())
      .flatMap(({ name: folder }) =>
        readdirSync(join("functions", folder)).flatMap((file) =>
          [...readFileSync(join("functions", folder, file), "utf8").matchAll(/^ {2}name: "([A-Z0-9]+)",$/gm)].map(
            ([, name]) => [name, folder] as const,
          ),
        ),
      ),
  );
  expect(catalogue.map(({ name, topic }) => [name, topic])).toEqual(
    catalogue.map(({ name }) => [name, folderOf.get(name)]),
  );
});

const limits = {
  /** What Excel's binary workbooks hold of the description of an argument ([MS-XLSB], ArgDesc); for a function's, from memory. */
  summary: 255,
  /** Excel before 2007, from memory. */
  parameters: 30,
  /** No spreadsheet's: kept short by choice, to be read at a glance while a formula is typed. */
  parameterDescription: 128,
};

describe.each(catalogue.map((definition) => [definition.name, definition] as const))("%s", (_, definition) => {
  const parameters: [string, Parameter<unknown>][] = Object.entries(definition.parameters);

  it("is described more briefly than the strictest spreadsheet asks", () => {
    expect(definition.summary.length).toBeLessThanOrEqual(limits.summary);
    expect(parameters.length).toBeLessThanOrEqual(limits.parameters);
    for (const [name, { description }] of parameters) {
      expect(name).toMatch(/^[a-z][a-z0-9_]*$/);
      expect(description.length).toBeLessThanOrEqual(limits.parameterDescription);
    }
  });

  it("has its optional arguments last", () => {
    const optional = parameters.map(([, parameter]) => parameter.optional);
    expect(optional).toEqual([...optional].sort());
  });

  it("shows what it gives, and what it refuses where it can refuse", () => {
    expect(definition.examples.some(({ gives }: { gives: unknown }) => !(gives instanceof Problem))).toBe(true);
    if (parameters.length > 0)
      expect(definition.examples.some(({ gives }: { gives: unknown }) => gives instanceof Problem)).toBe(true);
  });

  it("can be found by a question, and says what it rests on", () => {
    expect(definition.questions.length).toBeGreaterThan(0);
    if (parameters.length > 0) expect(definition.sources.length).toBeGreaterThan(0);
  });
});
