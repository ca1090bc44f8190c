import type { Look } from "./looks.ts";
import { oneCell } from "./references.ts";
import type { Content, NameCell, Rule, SheetAuthor } from "./sheetAuthor.ts";

/** One cell that a person fills: its name for formulas, what stands beside it, and what may be typed. */
export interface Field {
  readonly name: string;
  readonly label: string;
  readonly value: Content;
  readonly look: Look;
  readonly words: string;
  readonly rule?: Rule;
}

/** Writes fields below each other: label, cell, words. */
export function writeFields(sheet: SheetAuthor, nameCell: NameCell, top: number, fields: readonly Field[]): void {
  fields.forEach(({ name, label, value, look, words, rule }, index) => {
    const row = top + index;
    const cell = { row, column: 1 };
    sheet.put({ row, column: 0 }, label, "label");
    sheet.put(cell, value, look);
    sheet.put({ row, column: 2 }, words, "note");
    nameCell(name, sheet.name, cell);
    if (rule) sheet.accept(oneCell(cell), rule);
  });
}
