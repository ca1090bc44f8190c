import { describe, expect, test } from "vitest";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import type { SheetPlan } from "../../src/workbooks/writing/authorWorkbook.ts";
import { authorWorkbook } from "../../src/workbooks/writing/authorWorkbook.ts";
import type { Content } from "../../src/workbooks/writing/sheetAuthor.ts";
import { sheetCells } from "../samples/sheetCells.ts";

const contents: readonly Content[] = [
  "Hill & <Low>",
  " =1+1",
  0.1,
  -3e-7,
  true,
  null,
  { formula: 'IF("a"&A1<"b",1,2)' },
];

const written = (...sheets: readonly SheetPlan[]): Promise<Uint8Array> =>
  authorWorkbook({ title: "Aside", description: "Rows", made: "2026-10-31", sheets });

const sheetOf = (aside: boolean): SheetPlan => ({
  name: "Rows",
  write(sheet) {
    if (aside) sheet.rowsAside(1);
    sheet.put({ row: 0, column: 0 }, "above");
    sheet.rowHeight(3, 40);
    sheet.dress({ top: 3, left: 0, bottom: 4, right: 2 }, "workedPercent");
    for (const [step, content] of contents.entries())
      sheet.put({ row: 2 + step, column: 1 + (step % 2) }, content, "workedCount");
  },
});

describe("rows that are kept aside", () => {
  test("hold what the library would have written", async () => {
    const [plain, aside] = [await written(sheetOf(false)), await written(sheetOf(true))];
    expect(sheetCells(aside)).toEqual(sheetCells(plain));
    const cellsOf = (bytes: Uint8Array) =>
      openWorkbook(bytes).sheets[0]?.rows.flatMap(({ row, cells }) =>
        cells.map(({ column, formula, style }) => ({
          row,
          column,
          formula: formula?.text,
          style,
        })),
      );
    expect(cellsOf(aside)).toEqual(cellsOf(plain));
  });

  test("keep signs that XML cannot hold", async () => {
    const text = "bell \u0007, _x0041_";
    const write: SheetPlan["write"] = (sheet) => {
      sheet.rowsAside(1);
      sheet.put({ row: 2, column: 0 }, text);
    };
    expect(sheetCells(await written({ name: "Rows", write })).get("Rows!A3")).toBe(text);
  });

  test("take no list, and no row that was written before", async () => {
    const list: SheetPlan = {
      name: "Rows",
      write(sheet) {
        sheet.rowsAside(0);
        sheet.put({ row: 0, column: 0 }, { list: "FOOT.ABOUT()", room: { rows: 2, columns: 1 } });
      },
    };
    await expect(written(list)).rejects.toThrow("only values and plain formulas");
    const late: SheetPlan = {
      name: "Rows",
      write(sheet) {
        sheet.put({ row: 4, column: 0 }, "before");
        sheet.rowsAside(4);
        sheet.put({ row: 5, column: 0 }, "after");
      },
    };
    await expect(written(late)).rejects.toThrow("row 5 was written while the rows from 5 on are kept aside");
  });
});
