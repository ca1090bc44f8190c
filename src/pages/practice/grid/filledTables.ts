import type { IRange } from "@univerjs/core";
import type { Cell } from "../../../cells/cell.ts";
import { cellFromData } from "../../../hosts/headless/valueCells.ts";
import { placeText } from "../../../workbook/address.ts";
import type { GridBook } from "./gridBook.ts";

/** A table that a function's formula fills. */
export interface FilledTable {
  readonly functionName: string;
  readonly sheet: string;
  readonly address: string;
  readonly cells: readonly (readonly Cell[])[];
}

/** The tables that formulas with these functions fill in the open workbook. */
export function filledTables(book: GridBook, names: ReadonlySet<string>): readonly FilledTable[] {
  const areas = book.formulas.getArrayFormulaRange()[book.unit()] ?? {};
  const values = book.formulas.getArrayFormulaCellData()[book.unit()] ?? {};
  const tables: FilledTable[] = [];
  for (const [sheet, rows] of Object.entries(areas))
    for (const [row, line] of Object.entries(rows ?? {}))
      for (const [column, area] of Object.entries((line ?? {}) as Record<string, IRange>)) {
        const anchor = { sheet, row: Number(row), column: Number(column) };
        const functionName = calledIn(book.formulaAt(anchor) ?? "", names);
        if (functionName === undefined || !area) continue;
        tables.push({
          functionName,
          sheet: book.sheetName(sheet),
          address: placeText(anchor),
          cells: cellsOf(area, (at, across) => values[sheet]?.[at]?.[across]),
        });
      }
  return tables;
}

function cellsOf(area: IRange, valueAt: (row: number, column: number) => Parameters<typeof cellFromData>[0]): Cell[][] {
  const cells: Cell[][] = [];
  for (let row = area.startRow; row <= area.endRow; row += 1) {
    const line: Cell[] = [];
    for (let column = area.startColumn; column <= area.endColumn; column += 1)
      line.push(cellFromData(valueAt(row, column)));
    cells.push(line);
  }
  return cells;
}

/** The first of these functions that a formula calls. */
function calledIn(formula: string, names: ReadonlySet<string>): string | undefined {
  const calls = formula.matchAll(/FOOT\.([A-Z]+)\(/g);
  for (const [, name = ""] of calls) if (names.has(name)) return name;
  return undefined;
}
