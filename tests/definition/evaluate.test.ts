import { describe, expect, it } from "vitest";
import { clearDateFunction } from "../../functions/dates/clearDate.ts";
import { recheckDueFunction } from "../../functions/dates/recheckDue.ts";
import { nothingToReport, Problem } from "../../src/cells/problem.ts";
import { type AnyFunction, defineFunction } from "../../src/definition/defineFunction.ts";
import { evaluate } from "../../src/definition/evaluate.ts";
import { anyNumber } from "../../src/reading/numbers.ts";
import { column } from "../../src/reading/parameter.ts";
import { text } from "../../src/reading/words.ts";
import { type Answer, single, table } from "../../src/writing/result.ts";

const withCompute = (compute: (values: { readonly n: readonly number[] }) => Answer) =>
  defineFunction({
    name: "TRY",
    summary: "",
    questions: [],
    notes: [],
    parameters: { n: column(anyNumber(), "n") },
    result: single("n", "number"),
    caution: undefined,
    sources: [],
    compute,
    examples: [],
  });

describe("a call", () => {
  it("turns the place of a problem into the row of the range", () => {
    const definition = withCompute(() => {
      throw new Problem("too many", { argument: "n", index: 1 });
    });
    expect(evaluate(definition, [[[1], [null], [2]]])).toEqual({
      ok: false,
      code: "#VALUE!",
      message: "n, row 3: too many",
    });
  });

  it("gives #N/A when there is nothing to report", () => {
    const definition = withCompute(() => {
      throw nothingToReport("no sheep");
    });
    expect(evaluate(definition, [[[1]]])).toEqual({ ok: false, code: "#N/A", message: "no sheep" });
  });

  it("does not pass off a fault of ours as the user's", () => {
    expect(() =>
      evaluate(
        withCompute(() => Number.NaN),
        [1],
      ),
    ).toThrow(RangeError);
    expect(() =>
      evaluate(
        withCompute(() => [].at(1) as never as number),
        [1],
      ),
    ).not.toThrow();
    const broken = withCompute(() => {
      throw new TypeError("broken");
    });
    expect(() => evaluate(broken, [1])).toThrow(TypeError);
  });

  it("writes nothing as an empty text, never as null", () => {
    expect(
      evaluate(
        withCompute(() => undefined),
        [1],
      ),
    ).toMatchObject({ cells: [[""]] });
    expect(
      evaluate(
        withCompute(() => null),
        [1],
      ),
    ).toMatchObject({ cells: [[""]] });
  });

  it.each(["=1+1", "+x", "-x", "@x", "\tx"])("keeps %j from starting a formula", (typed) => {
    const echo: AnyFunction = {
      ...withCompute(() => ""),
      parameters: { n: column(text(), "n") },
      result: table<string>("none", ["word", "text", (word) => word]),
      compute: ({ n }) => n,
    };
    const outcome = evaluate(echo, [typed]);
    if (!outcome.ok) throw new Error(outcome.message);
    expect(String(outcome.cells[1]?.[0])).toMatch(/^(?![=+\-@\t\r])/);
  });
});

describe("results beside a column", () => {
  it("stand in the rows that they belong to, up to the last filled one", () => {
    expect(evaluate(recheckDueFunction, [[[46000], [null], [46002], [null]]])).toMatchObject({
      cells: [[46007], [""], [46009]],
    });
  });

  it("lie in a row for a row, with a format for each", () => {
    expect(evaluate(recheckDueFunction, [[[46000, null, 46002]]])).toMatchObject({
      cells: [[46007, "", 46009]],
      formats: ["date", "date", "date"],
    });
  });
});

describe("the 1904 date system", () => {
  it("moves every date in and out alike", () => {
    const at1900 = evaluate(clearDateFunction, [46063, 28]);
    const at1904 = evaluate(clearDateFunction, [46063 - 1462, 28], { dateSystem: 1904 });
    expect(at1900).toMatchObject({ cells: [[46092]] });
    expect(at1904).toMatchObject({ cells: [[46092 - 1462]] });
  });
});
