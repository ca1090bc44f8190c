import type { CellAlertManagerService } from "@univerjs/preset-sheets-core";

/** Keeps the embedded spreadsheet from saying "Error in value" of a cell: the sentence of the function stands there. */
export function withoutAlerts(alerts: CellAlertManagerService): void {
  alerts.showAlert = () => {};
}
