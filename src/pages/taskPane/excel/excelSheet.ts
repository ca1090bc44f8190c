import type { FormulaSheet } from "../../parts/formulaSheet.ts";
import { cellsAt } from "./cellsAt.ts";
import { troubleInWords } from "./troubleInWords.ts";

/** The workbook that the pane stands beside, as forms use it. */
export const excelSheet: FormulaSheet = {
  selected: () =>
    Excel.run(async (context) => {
      const range = context.workbook.getSelectedRange();
      range.load("address");
      await context.sync();
      return range.address;
    }),
  shown: (cell) =>
    Excel.run(async (context) => {
      const range = cellsAt(context, cell);
      range.load("text,formulas");
      await context.sync();
      // A formula that shows nothing is not an empty cell.
      return range.text[0]?.[0] || String(range.formulas[0]?.[0] ?? "");
    }),
  write: (cell, formula) =>
    Excel.run(async (context) => {
      const range = cellsAt(context, cell);
      range.formulas = [[formula]];
      range.select();
      await context.sync();
    }),
  inWords: troubleInWords,
};
