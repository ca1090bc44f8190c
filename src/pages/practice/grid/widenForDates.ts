import { getFontStyleString } from "@univerjs/preset-sheets-core";
import type { CellAt, GridBook } from "./gridBook.ts";
import { margins, widthOf } from "./hashes.ts";
import { isTypedInto } from "./isTypedInto.ts";
import { showsDay } from "./showsDay.ts";

const later = 500;

/** Widens columns in which a date that was typed or worked out has no room, as spreadsheets do. The file keeps its widths. */
export function widenForDates(book: GridBook, cells: readonly CellAt[]): void {
  const { api, commands, injector } = book;
  const workbook = api.getActiveWorkbook();
  if (!workbook) return;
  // A column that changes its width takes from the open editor what was typed so far.
  if (isTypedInto(injector)) {
    setTimeout(() => widenForDates(book, cells), later);
    return;
  }
  for (const { sheet, row, column } of cells) {
    const found = workbook.getSheetBySheetId(sheet);
    const cell = found?.getRange(row, column);
    const style = cell?.getCellStyleData();
    if (!found || !cell || typeof cell.getRawValue() !== "number" || !showsDay(style?.n?.pattern ?? "")) continue;
    const wanted =
      Math.ceil(widthOf(cell.getDisplayValue() ?? "", getFontStyleString(style ?? undefined).fontCache)) + margins + 2;
    if (wanted <= found.getColumnWidth(column)) continue;
    const range = { startRow: 0, endRow: found.getMaxRows() - 1, startColumn: column, endColumn: column };
    // By the mutation and not by its command: the person would have to undo it before what was typed.
    commands.syncExecuteCommand("sheet.mutation.set-worksheet-col-width", {
      unitId: workbook.getId(),
      subUnitId: sheet,
      ranges: [range],
      colWidth: wanted,
    });
  }
}
