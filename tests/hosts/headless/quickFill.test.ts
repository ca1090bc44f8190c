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
