import type { FWorksheet } from "@univerjs/preset-sheets-core/facade";
import type { Place } from "../../../workbook/address.ts";

/** Where a key leads that leads further than to the next cell. */
export type Leap = "first of row" | "first of sheet" | "last of sheet" | "window down" | "window up";

/** The cell that a key leads to; one row of what was in the window stays in it. */
export function leapFrom(at: Place, to: Leap, sheet: FWorksheet): Place {
  if (to === "first of row") return { row: at.row, column: 0 };
  if (to === "first of sheet") return { row: 0, column: 0 };
  if (to === "last of sheet")
    return { row: Math.max(0, sheet.getLastRow()), column: Math.max(0, sheet.getLastColumn()) };
  const seen = sheet.getVisibleRange();
  const further = Math.max(1, (seen ? seen.endRow - seen.startRow : 0) - 1);
  const row = at.row + (to === "window down" ? further : -further);
  return { row: Math.min(Math.max(0, row), sheet.getMaxRows() - 1), column: at.column };
}
