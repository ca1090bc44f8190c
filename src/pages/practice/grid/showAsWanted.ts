import { SetNumfmtMutation, transformCellsToRange } from "@univerjs/preset-sheets-core";
import { isOneCall } from "../../../workbook/saving/changesOf.ts";
import { patternFor } from "../../../writing/format.ts";
import type { GridBook } from "./gridBook.ts";
import type { Answered } from "./heard.ts";
import { isTypedInto } from "./isTypedInto.ts";
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
  if (isTypedInto(book.injector)) {
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
  const workbook = api.getActiveWorkbook()?.getWorkbook();
  const data = workbook?.getSheetBySheetId(sheet);
  if (!workbook || !data || !isOneCall(formulaAt({ sheet, row, column })?.slice(1) ?? "")) return [];
  const area = formulas.getArrayFormulaRange()[unit()]?.[sheet]?.[row]?.[column];
  const values = formulas.getArrayFormulaCellData()[unit()]?.[sheet];
  const styles = workbook.getStyles();
  const wanted: Wanted[] = [];
  for (let across = column; across <= (area?.endColumn ?? column); across += 1) {
    const format = shown.formats[Math.min(across - column, shown.formats.length - 1)];
    // Looked for once, and not for each of thousands of cells.
    if (format === undefined || data.getColumnStyle(across)?.n) continue;
    for (let at = shown.headings ? row + 1 : row; at <= (area?.endRow ?? row); at += 1) {
      const cell = data.getCellRaw(at, across);
      const pattern = patternFor(format, area ? values?.[at]?.[across]?.v : cell?.v);
      if (pattern !== "General" && !styles.getStyleByCell(cell)?.n) wanted.push({ row: at, col: across, pattern });
    }
  }
  return wanted;
}
