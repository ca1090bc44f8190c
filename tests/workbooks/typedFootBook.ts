import { readFileSync } from "node:fs";
import ExcelJS from "exceljs";
import type { Cell } from "../../src/cells/cell.ts";
import { engineInNode } from "../../src/hosts/headless/engineInNode.ts";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import { recalculate } from "../../src/workbook/recalculate.ts";
import type { Summary } from "../../src/workbook/summary.ts";
import { sheetNames } from "../../src/workbooks/footBook/bookSheets.ts";
import { placedCases } from "../../src/workbooks/footBook/placedRecords.ts";
import type { cases } from "../../src/workbooks/tables/cases.ts";
import type { KeyOf, RecordOf } from "../../src/workbooks/tables/defineTable.ts";
import { sheetCells } from "../samples/sheetCells.ts";

/** An empty foot book that is typed into, as by a person in another program. */
export interface TypedBook {
  readonly sheet: (name: string) => ExcelJS.Worksheet;
  /** Types a case into a row of the sheet, 1 for its first. */
  readonly typeCase: (row: number, record: RecordOf<typeof cases>) => void;
  /** What is worked out of it: every cell by its sheet and place. */
  readonly worked: () => Promise<{ readonly cells: ReadonlyMap<string, Cell>; readonly summary: Summary }>;
}

export async function emptyFootBook(): Promise<TypedBook> {
  const book = new ExcelJS.Workbook();
  await book.xlsx.load(readFileSync("samples/flock-foot-book-empty.xlsx") as never);
  const sheet = (name: string): ExcelJS.Worksheet => {
    const found = book.getWorksheet(name);
    if (!found) throw new Error(`there is no sheet ${name}`);
    return found;
  };
  return {
    sheet,
    typeCase(row, record) {
      for (const [key, value] of Object.entries(record) as [KeyOf<typeof cases>, Cell | undefined][])
        if (value !== undefined)
          sheet(sheetNames.cases).getCell(row, placedCases.column(key).left + 1).value = value as ExcelJS.CellValue;
    },
    async worked() {
      const saved = new Uint8Array((await book.xlsx.writeBuffer()) as ArrayBuffer);
      // This writer keeps the old values beside formulas whose cells were typed anew.
      const { bytes, summary } = await recalculate(openWorkbook(saved), engineInNode(), undefined, { all: true });
      return { cells: sheetCells(bytes), summary };
    },
  };
}
