import { describe, expect, it } from "vitest";
import { fromExcel } from "../../../src/hosts/excel/fromExcel.ts";

describe("fromExcel", () => {
  it.each([[4], ["12"], [true], [null], [""]])("hands %j on as it is", (value) => {
    expect(fromExcel(value)).toBe(value);
  });

  it.each([
    ["a formatted number", { type: "FormattedNumber", basicValue: 46_000, numberFormat: "d mmm" }, 46_000],
    ["a boolean with properties", { type: "Boolean", basicType: "Boolean", basicValue: true }, true],
    ["an empty cell", { type: "Empty", basicType: "Empty", basicValue: "" }, null],
    ["an entity", { type: "Entity", basicType: "Error", basicValue: "#VALUE!", text: "Ewe 42" }, "Ewe 42"],
    ["an error", { type: "Error", basicType: "Error", basicValue: "#REF!" }, { error: "#REF!" }],
    ["an error of the runtime", { type: "Error", code: "#N/A", basicValue: "#N/A" }, { error: "#N/A" }],
    ["an error only Excel knows", { type: "Error", basicType: "Error", basicValue: "#FIELD!" }, { error: "#VALUE!" }],
    ["a thing of no known kind", { type: "Function" }, { error: "#VALUE!" }],
  ])("turns %s into a cell", (_, value, cell) => {
    expect(fromExcel(value)).toEqual(cell);
  });
});
