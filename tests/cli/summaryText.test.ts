import { expect, test } from "vitest";
import { summaryText } from "../../src/cli/summaryText.ts";

const summary = {
  formulas: 9,
  calls: [{ name: "FOOT.LESIONNAME", formulas: 9 }],
  left: [],
  untouched: [],
  circular: false,
  changedCells: 0,
  changedParts: [],
};
const refused = (sheet: string, address: string, word: string) =>
  ({ sheet, address, code: "#VALUE!", message: `text: "${word}" is not known` }) as const;

test("cells of a sheet with the same error share a line, which names the first three and counts the others", () => {
  const errors = [
    ...["C2", "C5", "C6", "C9", "C11"].map((address) => refused("Cases", address, "sore")),
    refused("Cases", "C7", "hot"),
    refused("Old cases", "C2", "sore"),
  ];
  expect(summaryText({ ...summary, errors }).split("\n")).toEqual([
    "9 formulas worked out; with FOOT.LESIONNAME 9.",
    "7 cells end in an error:",
    '  Cases!C2, C5, C6 and 2 more  #VALUE!  text: "sore" is not known',
    '  Cases!C7                     #VALUE!  text: "hot" is not known',
    '  Old cases!C2                 #VALUE!  text: "sore" is not known',
  ]);
});

test("three cells with the same error are all named", () => {
  const errors = ["C2", "C5", "C6"].map((address) => refused("Cases", address, "sore"));
  expect(summaryText({ ...summary, errors })).toContain("  Cases!C2, C5, C6  #VALUE!");
});

test("formulas that keep their value share lines in the same way", () => {
  const left = ["A1", "A2", "A3", "A4"].map((address) => ({ sheet: "Own", address, reason: "it is unknown" }));
  expect(summaryText({ ...summary, errors: [], left })).toContain(
    "4 formulas keep their saved values:\n  Own!A1, A2, A3 and 1 more  it is unknown",
  );
});
