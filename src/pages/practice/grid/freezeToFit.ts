import type { IFreeze } from "@univerjs/core";
import { SetFrozenMutation } from "@univerjs/preset-sheets-core";
import type { GridBook } from "./gridBook.ts";

const ofRows = 46;
// More of the width is not given to columns that stay where they are.
const most = 0.4;

/**
 * Freezes fewer columns of the sheet in view where those of the workbook leave too little room beside them, as on a
 * telephone, and all of them again once there is room. What a person freezes stays as it is, and so does the file.
 */
export function freezeToFit({ api, commands, opened }: GridBook, container: HTMLElement): void {
  const sheet = api.getActiveWorkbook()?.getActiveSheet();
  const id = sheet?.getSheetId();
  const kept = id === undefined ? undefined : opened()?.shown.data.sheets[id]?.freeze;
  if (!sheet || id === undefined || !kept) return;
  const room = container.clientWidth * most;
  const scale = sheet.getZoom();
  let [columns, taken] = [0, ofRows];
  while (columns < kept.xSplit) {
    taken += sheet.getColumnWidth(columns) * scale;
    if (taken > room) break;
    columns += 1;
  }
  const now = sheet.getFreeze();
  const isOurs = now.ySplit === kept.ySplit && now.xSplit <= kept.xSplit;
  if (!isOurs || now.xSplit === columns || room === 0) return;
  const freeze: IFreeze = { ...kept, xSplit: columns, startColumn: columns === 0 ? -1 : columns };
  // By the mutation and not by its command: it is nothing to undo.
  commands.syncExecuteCommand(SetFrozenMutation.id, {
    unitId: api.getActiveWorkbook()?.getId(),
    subUnitId: id,
    ...freeze,
  });
}
