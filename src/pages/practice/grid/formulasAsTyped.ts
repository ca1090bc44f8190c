import type { ICellData } from "@univerjs/core";
import type { Place } from "../../../workbook/address.ts";
import { translate } from "../../../workbook/formula/translate.ts";
import { asStored } from "./asStored.ts";
import type { CellAt, GridBook } from "./gridBook.ts";
import { sheetPlace } from "./sheetId.ts";
import { withoutMark } from "./unclearDates.ts";

/** Formulas as a person types them, as the embedded spreadsheet takes them, and as a file holds them. */
export interface FormulasAsTyped {
  /** Takes what is typed into a cell, and puts the names and tables of the workbook in place in it. */
  readonly read: (content: ICellData, cell: CellAt) => void;
  /**
   * @param formula - as the embedded spreadsheet has it, with its `=`
   * @param sheet - its place among the sheets
   * @returns as the file is to hold it, without `=`
   */
  readonly stored: (formula: string, sheet: number, at: Place) => string;
  /** Another workbook is open. */
  readonly start: () => void;
}

export function formulasAsTyped({ ears, opened }: GridBook): FormulasAsTyped {
  // By what the embedded spreadsheet was given for them, since it knows cells only.
  const typed = new Map<string, string>();

  const givenFor = (formula: string, sheet: number, at: Place): string | undefined => {
    const book = opened();
    try {
      return book && translate(formula.slice(1), sheet, at, book.around).formula;
    } catch {
      return undefined;
    }
  };

  return {
    read(content, { sheet, row, column }) {
      ears.forget(sheet, row, column);
      if (typeof content.v === "string") content.v = withoutMark(content.v);
      if (typeof content.f !== "string" || !content.f.startsWith("=")) return;
      const given = givenFor(content.f, sheetPlace(sheet), { row, column });
      // What cannot be read stays as it was typed, and shows its error.
      if (given === undefined || given === content.f) return;
      typed.set(given, content.f);
      content.f = given;
    },
    stored(formula, sheet, at) {
      const own = typed.get(formula);
      // A copy may stand where the same words mean other cells.
      const isSame = own !== undefined && givenFor(own, sheet, at) === formula;
      return asStored((isSame ? own : formula).slice(1), opened()?.workbook.sheets[sheet]?.tables ?? [], at);
    },
    start: () => typed.clear(),
  };
}
