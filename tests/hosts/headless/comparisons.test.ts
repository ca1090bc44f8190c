import { expect, it } from "vitest";
import type { Cell } from "../../../src/cells/cell.ts";
import { engineInNode } from "../../../src/hosts/headless/engineInNode.ts";
import { type EngineCell, placeKey } from "../../../src/workbook/engine.ts";

const flocks = 3000;

const inputs: EngineCell[] = Array.from({ length: flocks }, (_, row) => row).flatMap((row) =>
  ([`Flock ${row}`, row % 5, 100] as const).map((value: Cell, column) => ({ row, column, value })),
);

const formula = (row: number, column: number, text: string): EngineCell => ({
  row,
  column,
  value: null,
  formula: text,
});

it("a column that a formula fills is looked up as it is filled", async () => {
  const cells = [
    ...inputs,
    // The looks stand before, between and after the columns they look at.
    formula(5000, 0, `=COUNTIF(E1:E${flocks + 1},"Flock 17")`),
    formula(0, 4, `=FOOT.FUNNEL(A1:A${flocks},B1:B${flocks},C1:C${flocks})`),
    formula(0, 14, `=COUNTIF(E1:E${flocks + 1},"Flock 2999")`),
    formula(1, 14, `=COUNTIF(G1:G${flocks + 1},0.02)`),
    formula(2, 14, `=COUNTIF(O1:O2,1)`),
    formula(3, 14, `=XLOOKUP("Flock 6",E1:E${flocks + 1},G1:G${flocks + 1})`),
  ];
  const { sheets } = await engineInNode().calculate({
    sheets: [{ name: "Flocks", cells }],
    dateSystem: 1900,
    names: [],
  });
  const at = (row: number, column: number) => sheets[0]?.get(placeKey(row, column))?.value;
  expect(sheets[0]?.get(placeKey(0, 4))?.spill?.cells).toHaveLength(flocks + 1);
  expect(at(5000, 0)).toBe(1);
  expect(at(0, 14)).toBe(1);
  expect(at(1, 14)).toBe(flocks / 5);
  expect(at(2, 14)).toBe(1);
  expect(at(3, 14)).toBe(0.01);
});

// What Excel says of an empty text, a blank cell, a 0 and a number kept as text; common practice, no source.
it.each([
  ['=IF(A1="","blank","filled")', "filled"],
  ['=IF(AND(A1=""),"blank","filled")', "filled"],
  ['=IF(NOT(A1=""),"filled","blank")', "filled"],
  ['=IF(A2="","blank","filled")', "blank"],
  ['=IF(A3="","blank","filled")', "blank"],
  ["=IF(A2=0,1,2)", 1],
  ["=IF(A3=0,1,2)", 2],
  ["=IF(A4=5,1,2)", 2],
  ['=IF(A4="5",1,2)', 1],
  ['=COUNTIFS(A1:A4,"")', 2],
  ["=COUNTIFS(A1:A4,0)", 1],
])("%s is %j, whatever was compared before", async (text, answer) => {
  const compared = ['=A1=""', '=IF(A1:A4="",1,0)', "=IF(A1:A4=0,1,0)", '=COUNTIF(A1:A4,"")', "=COUNTIF(A1:A4,5)"];
  const cells: EngineCell[] = [
    { row: 0, column: 0, value: 0 },
    { row: 2, column: 0, value: "" },
    { row: 3, column: 0, value: "5" },
    ...compared.map((before, index) => formula(10 * index, 5, before)),
    formula(60, 9, text),
    ...compared.map((after, index) => formula(70 + 10 * index, 5, after)),
  ];
  const { sheets } = await engineInNode().calculate({
    sheets: [{ name: "Zero", cells }],
    dateSystem: 1900,
    names: [],
  });
  expect(sheets[0]?.get(placeKey(60, 9))?.value).toBe(answer);
});

it("an empty text is a text, whether typed or given by a formula, and a blank cell is none", async () => {
  const cells: EngineCell[] = [
    { row: 0, column: 0, value: "" },
    formula(1, 0, '=""'),
    { row: 2, column: 0, value: null },
    formula(0, 2, "=ISBLANK(A1)"),
    formula(1, 2, "=ISBLANK(A2)"),
    formula(2, 2, "=ISBLANK(A3)"),
    formula(3, 2, "=COUNTA(A1:A3)"),
    formula(4, 2, "=A2>0"),
  ];
  const { sheets } = await engineInNode().calculate({
    sheets: [{ name: "Texts", cells }],
    dateSystem: 1900,
    names: [],
  });
  expect([0, 1, 2, 3, 4].map((row) => sheets[0]?.get(placeKey(row, 2))?.value)).toEqual([false, false, true, 2, true]);
});
