import { expect, test } from "vitest";
import { summaryText } from "../../src/cli/summaryText.ts";
import { textColumns } from "../../src/cli/textColumns.ts";

const summary = {
  formulas: 9,
  kept: 0,
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

test("formulas that keep what the spreadsheet worked out are counted", () => {
  expect(summaryText({ ...summary, errors: [], kept: 12 })).toBe(
    "9 formulas worked out; with FOOT.LESIONNAME 9.\n12 formulas keep what the spreadsheet had worked out; --all works out these too.",
  );
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

test("very many different messages are counted, and only the first of them listed", () => {
  const many = 130_000;
  const errors = Array.from({ length: many }, (_, index) => refused("Cases", `C${index + 2}`, `word ${index}`));
  const left = Array.from({ length: many }, (_, index) => ({
    sheet: "Own",
    address: `A${index + 1}`,
    reason: `it uses F${index}`,
  }));
  const lines = summaryText({ ...summary, errors, left }).split("\n");
  expect(lines).toHaveLength(2 * 42 + 1);
  expect(lines[1]).toBe("130000 cells end in an error:");
  expect(lines[41]).toBe('  Cases!C41  #VALUE!  text: "word 39" is not known');
  expect(lines[42]).toBe("  and 129960 more cells");
  expect(lines[43]).toBe("130000 formulas keep their saved values:");
  expect(lines[84]).toBe("  and 129960 more formulas");
});

test("what is not listed is counted by its cells", () => {
  const errors = Array.from({ length: 41 }, (_, index) =>
    ["C", "D"].map((letter) => refused("Cases", `${letter}${index + 2}`, `word ${index}`)),
  );
  const lines = summaryText({ ...summary, errors: errors.flat() }).split("\n");
  expect(lines[1]).toBe("82 cells end in an error:");
  expect(lines.at(-1)).toBe("  and 2 more cells");
  const one = summaryText({ ...summary, errors: errors.flat().slice(0, 81) }).split("\n");
  expect(one.at(-1)).toBe("  and 1 more cell");
});

test("lines up any number of rows", () => {
  const rows = Array.from({ length: 200_000 }, (_, index) => [`row ${index}`, String(index)]);
  expect(textColumns(rows).at(-1)).toBe("row 199999  199999");
});
