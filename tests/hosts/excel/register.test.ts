import { describe, expect, it } from "vitest";
import { catalogue } from "../../../functions/catalogue.ts";
import { nothingToReport } from "../../../src/cells/problem.ts";
import { defineFunction } from "../../../src/definition/defineFunction.ts";
import type { ExcelHost } from "../../../src/hosts/excel/excelHost.ts";
import { type Runtime, register } from "../../../src/hosts/excel/register.ts";
import { anyNumber } from "../../../src/reading/numbers.ts";
import { one } from "../../../src/reading/parameter.ts";
import { single } from "../../../src/writing/result.ts";

class RuntimeError extends Error {
  constructor(
    readonly code: string,
    message?: string,
  ) {
    super(message);
  }
}

const plain: ExcelHost = { formattedNumbers: false, dateSystem: 1900 };

function registered(host: Promise<ExcelHost>, compute: (value: number) => number) {
  const functions = new Map<string, (...given: unknown[]) => unknown>();
  const runtime = {
    associate: (name: string, work: (...given: unknown[]) => unknown) => functions.set(name, work),
    Error: RuntimeError,
    ErrorCode: { invalidValue: "#VALUE!", notAvailable: "#N/A" },
  } as unknown as Runtime;
  const definition = defineFunction({
    name: "TRIED",
    summary: "",
    questions: [],
    notes: [],
    parameters: { value: one(anyNumber(), "") },
    result: single("", "number"),
    caution: undefined,
    sources: [],
    compute: ({ value }) => compute(value),
    examples: [],
  });
  register([definition], runtime, host);
  return functions.get("TRIED") as (...given: unknown[]) => unknown;
}

const invocation = { functionName: "TRIED" };

describe("register", () => {
  it("answers a call that comes before Excel is known, and later ones at once", async () => {
    const tried = registered(Promise.resolve(plain), (value) => value * 2);
    expect(await tried(21, invocation)).toBe(42);
    expect(tried(21, invocation)).toBe(42);
  });

  it("leaves out the object that the runtime adds, so that one argument too many is still told", async () => {
    const tried = registered(Promise.resolve(plain), (value) => value);
    await tried(1, invocation);
    expect(() => tried(1, 2, invocation)).toThrow("2 arguments were given, but this function takes at most 1: value");
  });

  it("gives nothing to report as #N/A", async () => {
    const tried = registered(Promise.resolve(plain), () => {
      throw nothingToReport("nothing was seen");
    });
    await expect(tried(1, invocation)).rejects.toMatchObject({ code: "#N/A", message: "nothing was seen" });
  });

  it("says so when the fault is not the user's", async () => {
    const tried = registered(Promise.resolve(plain), () => {
      throw new TypeError("x is not a function");
    });
    await expect(tried(1, invocation)).rejects.toMatchObject({
      code: "#VALUE!",
      message: "TRIED failed through a fault of its own (x is not a function); please report it with this formula",
    });
  });

  it("gives the result that is not a number as an error with a message, never as NaN", async () => {
    const tried = registered(Promise.resolve(plain), () => Number.NaN);
    await expect(tried(1, invocation)).rejects.toMatchObject({
      code: "#VALUE!",
      message: expect.stringContaining("NaN"),
    });
  });
});

it("no two functions share a name", () => {
  expect(new Set(catalogue.map(({ name }) => name)).size).toBe(catalogue.length);
});
