import { describe, expect, it } from "vitest";
import { catalogue } from "../../../functions/catalogue.ts";
import { functionsJson } from "../../../src/hosts/excel/functionsJson.ts";
import type { Parameter } from "../../../src/reading/parameter.ts";

const { functions, enums, ...rest } = functionsJson(catalogue);
const all = functions.map((metadata) => [metadata.name, metadata] as const);

/** Published for the vendor's unified manifest; of descriptions the formula list shows 255 letters (from memory). */
const limits = { name: 64, description: 255, parameters: 128, parameterDescription: 255 };

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

  it("offers the words of each choice while it is typed, and only those", () => {
    const lists = new Map(enums.map(({ id, values }) => [id, values.map(({ stringValue }) => stringValue)]));
    expect(lists.size).toBe(enums.length);
    for (const { name, parameters } of catalogue) {
      const described = functions.find(({ id }) => id === name)?.parameters ?? [];
      Object.values(parameters as Record<string, Parameter<unknown>>).forEach(({ shape, kind }, index) => {
        const offered = shape === "one" && kind.holds === "text" ? kind.words : undefined;
        expect(lists.get(described[index]?.customEnumId ?? ""), name).toEqual(offered);
        // What is offered is taken.
        for (const word of offered ?? []) expect(() => kind.read(word, { dayOffset: 0 })).not.toThrow();
      });
    }
    // The vendor's rule for ids: 3 to 64 letters, digits, points and underscores, a letter first (read).
    for (const { id } of enums) expect(id).toMatch(/^[A-Za-z][A-Za-z0-9._]{2,63}$/);
    expect(lists.get("PREVRANGE.method")).toEqual(["wilson", "exact", "jeffreys"]);
  });

  it("links each function to its place on the help page", () => {
    const [first] = functionsJson(catalogue, "https://example.org/taskpane.html").functions;
    expect(first?.helpUrl).toBe(`https://example.org/taskpane.html#${catalogue[0]?.name}`);
  });
});
