import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Cell } from "../../../src/cells/cell.ts";
import { engineInNode } from "../../../src/hosts/headless/engineInNode.ts";
import { type EngineCell, placeKey } from "../../../src/workbook/engine.ts";

const rows = 8;

/** The answers of the cells from column C on, beside two columns of cells. */
async function workedOut(columns: readonly (readonly Cell[])[], formulas: readonly EngineCell[]) {
  const typed = columns.flatMap((cells, column) => cells.map((value, row) => ({ row, column, value })));
  const { sheets } = await engineInNode().calculate({
    dateSystem: 1900,
    names: [],
    sheets: [{ name: "Cases", cells: [...typed.filter(({ value }) => value !== null), ...formulas] }],
  });
  return (row: number, column: number) => sheets[0]?.get(placeKey(row, column));
}

/** One formula over all rows, and the same written out for each. */
const each = [
  ['IF(LEN(A1:A8)=0,"",A1:A8&B1:B8)', (row: number) => `IF(LEN(A${row})=0,"",A${row}&B${row})`],
  ['IFERROR(A1:A8*2+B1:B8,"no number")', (row: number) => `IFERROR(A${row}*2+B${row},"no number")`],
  ["MATCH(A1:A8&B1:B8,A1:A8&B1:B8,0)", (row: number) => `MATCH(A${row}&B${row},A1:A8&B1:B8,0)`],
  ['COUNTIF(A1:A8,A1:A8&"")', (row: number) => `COUNTIF(A1:A8,A${row}&"")`],
] as const;

describe("rows with the same cells as the row above", () => {
  it("are answered as if each stood alone", async () => {
    const cell = fc.constantFrom<Cell[]>(null, "", 1, 1, 2, "1", "ZZ 0123456 00001", true, { error: "#N/A" });
    const column = fc.array(cell, { minLength: rows, maxLength: rows });
    const run = async (one: readonly Cell[], other: readonly Cell[]) => {
      const formulas = each.flatMap(([whole, of], index) => [
        { row: 0, column: 2 + 2 * index, value: null, formula: `=${whole}` },
        ...Array.from({ length: rows }, (_, row) => ({
          row,
          column: 3 + 2 * index,
          value: null,
          formula: `=${of(row + 1)}`,
        })),
      ]);
      const at = await workedOut([one, other], formulas);
      each.forEach(([whole], index) => {
        const together = at(0, 2 + 2 * index)?.spill?.cells.map(([first]) => first);
        const alone = Array.from({ length: rows }, (_, row) => at(row, 3 + 2 * index)?.value);
        expect(together, whole).toEqual(alone);
      });
    };
    await fc.assert(fc.asyncProperty(column, column, run), { numRuns: 60 });
  });

  it("are worked out again where the answer may be another", async () => {
    const formula = "=MAP(A1:A8,LAMBDA(x,RAND()))";
    const at = await workedOut([Array.from({ length: rows }, () => 1)], [{ row: 0, column: 2, value: null, formula }]);
    expect(new Set(at(0, 2)?.spill?.cells.flat()).size).toBe(rows);
  });
});
