import { IEditorBridgeService, SetNumfmtMutation, transformCellsToRange } from "@univerjs/preset-sheets-core";
import { isOneCall } from "../../../workbook/saving/changesOf.ts";
import { patternFor } from "../../../writing/format.ts";
import type { GridBook } from "./gridBook.ts";
import type { Answered } from "./heard.ts";
import { widenForDates } from "./widenForDates.ts";

const later = 300;

interface Wanted {
  readonly row: number;
  readonly col: number;
  readonly pattern: string;
}

/** Shows the answers that arrived last as their functions want them shown, in cells that have no format of their own. */
export function showAsWanted(book: GridBook): void {
  // A cell that gets a format takes from the open editor what was typed so far.
  if (book.injector.get(IEditorBridgeService).isVisible().visible) {
    setTimeout(() => showAsWanted(book), later);
    return;
  }
  const wanted = new Map<string, Wanted[]>();
  for (const answered of book.ears.takeShown()) {
    const cells = wanted.get(answered.sheetId) ?? [];
    wanted.set(answered.sheetId, cells);
    cells.push(...wantedFor(book, answered));
  }
  // Not by the command of the same name: the person would have to undo each format before what was typed.
  for (const [sheet, cells] of wanted)
    if (cells.length > 0)
      book.commands.syncExecuteCommand(SetNumfmtMutation.id, transformCellsToRange(book.unit(), sheet, cells));
  for (const [sheet, cells] of wanted)
    widenForDates(
      book,
      cells.map(({ row, col }) => ({ sheet, row, column: col })),
    );
}

function wantedFor({ api, formulas, formulaAt, unit }: GridBook, answered: Answered): readonly Wanted[] {
  const { sheetId: sheet, row, column, shown } = answered;
  const data = api.getActiveWorkbook()?.getSheetBySheetId(sheet);
  if (!data || !isOneCall(formulaAt({ sheet, row, column })?.slice(1) ?? "")) return [];
  const area = formulas.getArrayFormulaRange()[unit()]?.[sheet]?.[row]?.[column];
  const values = formulas.getArrayFormulaCellData()[unit()]?.[sheet];
  const wanted: Wanted[] = [];
  for (let at = row; at <= (area?.endRow ?? row); at += 1) {
    if (shown.headings && at === row) continue;
    for (let across = column; across <= (area?.endColumn ?? column); across += 1) {
      const format = shown.formats[Math.min(across - column, shown.formats.length - 1)];
      const range = data.getRange(at, across);
      const value = area ? values?.[at]?.[across]?.v : range.getRawValue();
      const pattern = format === undefined ? "General" : patternFor(format, value);
      if (pattern !== "General" && !range.getCellStyleData()?.n) wanted.push({ row: at, col: across, pattern });
    }
  }
  return wanted;
}
