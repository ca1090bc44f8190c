import type { Cell } from "../../src/cells/cell.ts";
import { placeText } from "../../src/workbook/address.ts";
import type { CalcCell, CalcWorkbook } from "./startCalc.ts";

/** Whether two cells hold the same, to the last digit. */
export const identical = (got: CalcCell, wanted: Cell): boolean => JSON.stringify(got) === JSON.stringify(wanted);

/**
 * Cells in which Calc has something else, by what `isSame` takes for the same. One thing is not compared, since Calc has
 * no such values: yes and no are 1 and 0.
 */
export function differences(
  sheets: CalcWorkbook["sheets"],
  expected: ReadonlyMap<string, Cell>,
  isSame: (got: CalcCell, wanted: Cell) => boolean,
): readonly string[] {
  const left = new Map(expected);
  const found: string[] = [];
  for (const [name, rows] of Object.entries(sheets)) {
    rows.forEach((cells, row) => {
      cells.forEach((got, column) => {
        const address = `${name}!${placeText({ row, column })}`;
        const value = left.get(address) ?? "";
        left.delete(address);
        const wanted = typeof value === "boolean" ? Number(value) : value;
        if (!isSame(got, wanted)) found.push(`${address}: ${JSON.stringify(got)} instead of ${JSON.stringify(wanted)}`);
      });
    });
  }
  return [...found, ...[...left].map(([address, value]) => `${address}: no cell instead of ${JSON.stringify(value)}`)];
}
