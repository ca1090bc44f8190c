import { describe, expect, it } from "vitest";
import { catalogue } from "../../../functions/catalogue.ts";
import { functionsJson } from "../../../src/hosts/excel/functionsJson.ts";

const { functions, ...rest } = functionsJson(catalogue);
const all = functions.map((metadata) => [metadata.name, metadata] as const);

/** Published for the vendor's unified manifest; for this kind of manifest none are. The catalogue keeps stricter ones. */
const limits = { name: 64, description: 1024, parameters: 128, parameterDescription: 512 };

describe("Excel's description of the functions", () => {
  it("asks for errors and data types to be handed over", () => {
    expect(rest).toEqual({ allowCustomDataForDataTypeAny: true, allowErrorForDataTypeAny: true });
  });

  it("has every function once", () => {
    expect(new Set(functions.map(({ id }) => id))).toEqual(new Set(catalogue.map(({ name }) => name)));
    expect(functions).toHaveLength(catalogue.length);
  });

  it.each(all)("%s has an id and a name that Excel takes", (_, { id, name }) => {
    expect(id).toBe(name);
    // Letters and digits only, since workbooks write an underscore between the namespace and the name.
    expect(name).toMatch(/^[A-Z][A-Z0-9]{2,}$/);
    expect(name.length).toBeLessThanOrEqual(limits.name);
    // The last column is XFD: up to three letters and digits is the address of a cell.
    expect(name).not.toMatch(/^[A-Z]{1,3}\d+$/);
  });

  it.each(all)("%s is described within the limits", (_, { description, parameters }) => {
    expect(description.length).toBeGreaterThan(10);
    expect(description.length).toBeLessThanOrEqual(limits.description);
    expect(parameters.length).toBeLessThanOrEqual(limits.parameters);
    for (const parameter of parameters) {
      expect(parameter.name).toMatch(/^[a-z][a-z0-9_]*$/);
      expect(parameter.description.length).toBeGreaterThan(3);
      expect(parameter.description.length).toBeLessThanOrEqual(limits.parameterDescription);
    }
    expect(new Set(parameters.map(({ name }) => name)).size).toBe(parameters.length);
  });

  it.each(all)("%s has its optional arguments at the end", (_, { parameters }) => {
    const firstOptional = parameters.findIndex(({ optional }) => optional);
    if (firstOptional >= 0) expect(parameters.slice(firstOptional).every(({ optional }) => optional)).toBe(true);
    expect(parameters.every(({ type }) => type === "any")).toBe(true);
  });

  it.each(catalogue.map((definition) => [definition.name, definition] as const))(
    "%s takes ranges where it reads columns, and spills unless it gives one cell",
    (name, definition) => {
      const metadata = functions.find((one) => one.name === name);
      expect(metadata?.result.dimensionality).toBe(definition.result.shape === "single" ? "scalar" : "matrix");
      expect(metadata?.parameters.map(({ dimensionality }) => dimensionality)).toEqual(
        Object.values(definition.parameters).map((parameter) =>
          (parameter as { shape: string }).shape === "one" ? "scalar" : "matrix",
        ),
      );
    },
  );

  it("says the caution where the function is offered, and what stands when an argument is left out", () => {
    const clearDate = functions.find(({ id }) => id === "CLEARDATE");
    expect(clearDate?.description).toContain("does not know the product");
    expect(clearDate?.parameters.at(-1)).toMatchObject({ name: "counting", optional: true });
    expect(clearDate?.parameters.at(-1)?.description).toMatch(/; "whole days" when left out$/);
  });

  it("links each function to its place on the help page", () => {
    const [first] = functionsJson(catalogue, "https://example.org/taskpane.html").functions;
    expect(first?.helpUrl).toBe(`https://example.org/taskpane.html#${catalogue[0]?.name}`);
  });
});
