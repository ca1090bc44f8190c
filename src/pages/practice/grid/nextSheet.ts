import type { FUniver } from "@univerjs/core/facade";

/** The next sheet that is shown, to the right or, below 0, to the left of the one in view; undefined at the end. */
export function nextSheet(api: FUniver, further: number) {
  const workbook = api.getActiveWorkbook();
  const sheets = workbook?.getSheets() ?? [];
  const at = sheets.findIndex((sheet) => sheet.getSheetId() === workbook?.getActiveSheet().getSheetId());
  const shown = sheets.filter((sheet, index) => (further > 0 ? index > at : index < at) && !sheet.isSheetHidden());
  return further > 0 ? shown[0] : shown.at(-1);
}
