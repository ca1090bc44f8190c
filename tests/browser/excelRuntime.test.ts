import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { catalogue } from "../../functions/catalogue.ts";
import { dayOf } from "../../src/cells/day.ts";
import { evaluate } from "../../src/definition/evaluate.ts";
import { patternFor } from "../../src/writing/format.ts";
import { asArgument, mismatch } from "../functions/exampleCall.ts";
import { asOutcome, excelCall, formatsArrived, rich } from "./excelCall.ts";
import { type Arrived, type ExcelPage, openExcel } from "./excelPage.ts";
import { launch } from "./launch.ts";

const examples = catalogue.flatMap((definition) =>
  definition.examples.map((example, index) => ({
    definition,
    example,
    title: `${definition.name}: ${example.shows ?? `example ${index + 1}`}`,
  })),
);
const calls = examples.map(({ definition, example }) => excelCall(definition, example));

let browser: Browser;
let functions: Buffer;
beforeAll(async () => {
  functions = readFileSync(join(inject("addInFolder"), "functions.js"));
  browser = await launch();
});
afterAll(() => browser?.close());

describe("in an Excel that says nothing about itself", () => {
  let excel: ExcelPage;
  let arrived: readonly Arrived[];
  beforeAll(async () => {
    excel = await openExcel(browser, functions);
    arrived = await excel.call(calls);
  });

  it("every function is registered under its name", async () => {
    expect(await excel.registered()).toEqual(catalogue.map(({ name }) => name));
  });

  it.each(examples.map(({ title }, index) => [title, index] as const))("%s", (_, index) => {
    const answer = arrived[index] as Arrived;
    expect(mismatch(asOutcome(answer), examples[index]?.example.gives as never)).toBeUndefined();
    if ("value" in answer) expect(formatsArrived(answer).flat()).not.toContainEqual(expect.anything());
  });

  it("asks nobody for anything but the vendor's own parts", () => {
    expect(excel.refused.filter((address) => !address.startsWith("https://add-in.invalid/"))).toEqual([]);
  });
});

describe("in an Excel that knows formatted numbers", () => {
  let excel: ExcelPage;
  let arrived: readonly Arrived[];
  beforeAll(async () => {
    excel = await openExcel(browser, functions, { sets: ["CustomFunctionsRuntime 1.4"], dateSystem: 1900 });
    arrived = await excel.call(calls);
  });

  it.each(examples.map(({ title }, index) => [title, index] as const))("%s", (_, index) => {
    const answer = arrived[index] as Arrived;
    const { definition, example } = examples[index] as (typeof examples)[number];
    expect(mismatch(asOutcome(answer), example.gives)).toBeUndefined();
    if ("value" in answer) expect(formatsArrived(answer)).toEqual(formatsWanted(definition, example.call));
  });

  it("a date and a share arrive with a format", async () => {
    const [date, share] = await excel.call([
      { id: "CLEARDATE", parameters: [[[dayOf("2026-02-10")]], [[28]], null] },
      { id: "FLOCKPREV", parameters: [[[4]], [[20]]] },
    ]);
    expect(date).toEqual({
      value: [[{ type: "FormattedNumber", basicValue: dayOf("2026-03-11"), numberFormat: "d mmm yyyy" }]],
    });
    expect(share).toEqual({ value: { type: "FormattedNumber", basicValue: 0.2, numberFormat: "0.0%" } });
  });

  it("a long column arrives as plain numbers, because each answer has a largest size", async () => {
    const treated = Array.from({ length: 20_001 }, (_, index) => [dayOf("2026-02-10") + (index % 28)]);
    const [answer] = await excel.call([{ id: "CLEARDATE", parameters: [treated, [[28]], null] }]);
    expect(answer).toEqual({ value: treated.map(([day = 0]) => [day + 29]) });
  });
});

// Where the outcome is a number and its format changes its look, that format is what Excel is to be told.
function formatsWanted(definition: (typeof catalogue)[number], call: (typeof examples)[number]["example"]["call"]) {
  const outcome = evaluate(definition, call.map(asArgument));
  if (!outcome.ok) throw new Error(outcome.message);
  return outcome.cells.map((row, r) =>
    row.map((cell, c) => {
      const format = patternFor(outcome.formats[c] ?? "text", cell);
      const shown = typeof cell === "number" && !(outcome.headings && r === 0);
      return shown && format !== "General" && format !== "0" ? format : undefined;
    }),
  );
}

describe("in a workbook that counts from 1904", () => {
  it("dates typed as text and dates counted from 1904 mean the same day", async () => {
    const excel = await openExcel(browser, functions, { sets: [], dateSystem: 1904 });
    const answers = await excel.call([
      { id: "CLEARDATE", parameters: [[["2026-02-10"]], [[28]], null] },
      { id: "CLEARDATE", parameters: [[[dayOf("2026-02-10") - 1462]], [[28]], null] },
    ]);
    expect(answers).toEqual([{ value: [[dayOf("2026-03-11") - 1462]] }, { value: [[dayOf("2026-03-11") - 1462]] }]);
  });
});

describe("what Excel hands over", () => {
  let excel: ExcelPage;
  beforeAll(async () => {
    excel = await openExcel(browser, functions, { sets: [], dateSystem: 1900 });
  });
  const share = async (lame: readonly unknown[], seen: readonly unknown[], flags?: number): Promise<Arrived> => {
    const parameters = [lame.map((cell) => [cell]), seen.map((cell) => [cell])];
    const [answer] = await excel.call([{ id: "FLOCKPREV", parameters, ...(flags === undefined ? {} : { flags }) }]);
    return answer as Arrived;
  };

  it("blank cells as null or as an empty text are no gather", async () => {
    expect(await share([4, null, 1, null], [20, null, 30, null])).toEqual({ value: 0.1 });
    expect(await share([4, "", 1, ""], [20, "", 30, ""])).toEqual({ value: 0.1 });
  });

  it("an error in a cell is told with its row, in both forms in which errors come", async () => {
    const told = { code: "#VALUE!", message: "seen, row 2: the cell holds #DIV/0!; mend that cell first" };
    const asDataType = rich({ type: "Error", basicType: "Error", basicValue: "#DIV/0!", errorType: "Div0" });
    expect(await share([4, 1], [20, asDataType])).toEqual(told);
    expect(await share([4, 1], [20, { type: "CustomFunctionError", code: "#DIV/0!" }], 4)).toEqual(told);
  });

  it("a number that has a format counts as the number", async () => {
    expect(await share([rich({ type: "FormattedNumber", basicValue: 4, numberFormat: "0.00" })], [20])).toEqual({
      value: 0.2,
    });
    expect(await share([rich({ type: "Double", basicType: "Double", basicValue: 4 })], [20])).toEqual({ value: 0.2 });
  });

  it("an entity counts as the text its cell shows", async () => {
    const entity = rich({ type: "Entity", text: "blue-42", basicType: "Error", basicValue: "#VALUE!", properties: {} });
    expect(await excel.call([{ id: "TAGKEY", parameters: [entity] }])).toEqual([{ value: "BLUE42" }]);
  });

  it("arguments left out at the end may be missing altogether", async () => {
    const [answer] = await excel.call([{ id: "CLEARDATE", parameters: [[[dayOf("2026-02-10")]], [[28]]] }]);
    expect(answer).toEqual({ value: [[dayOf("2026-03-11")]] });
  });
});
