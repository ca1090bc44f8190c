import type { ICellData, IStyleData } from "@univerjs/core";
import { SpreadsheetSkeleton } from "@univerjs/preset-sheets-core";

/** The sheet that is being drawn. */
export interface DrawnSheet {
  /** In pixels. */
  readonly getColumnWidth: (column: number) => number;
  readonly getMergedCell: (row: number, column: number) => unknown;
}

/** Gives what is drawn instead of a cell, or the cell itself. */
type AsDrawn = (
  sheet: DrawnSheet,
  row: number,
  column: number,
  cell: ICellData,
  style: IStyleData | undefined,
) => ICellData;

interface Skeleton {
  readonly worksheet: DrawnSheet;
  _setFontStylesCache: (row: number, column: number, cell: ICellData, style: IStyleData | undefined) => void;
}

const changed = new WeakSet<object>();

/**
 * Draws cells otherwise than what they hold, in every sheet of the page. The embedded spreadsheet lets a cell's value be
 * changed for drawing before its width is known; this changes it where the width is at hand.
 */
export function drawCellsAs(asDrawn: AsDrawn): void {
  const skeleton = SpreadsheetSkeleton.prototype as unknown as Skeleton;
  if (changed.has(skeleton)) return;
  changed.add(skeleton);
  const lay = skeleton._setFontStylesCache;
  skeleton._setFontStylesCache = function (row, column, cell, style) {
    lay.call(this, row, column, asDrawn(this.worksheet, row, column, cell, style), style);
  };
}
