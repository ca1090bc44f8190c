import type { UnreadWorkbook } from "./lookInto.ts";
import type { SheetCell } from "./model.ts";
import { placeNamed } from "./placeNamed.ts";

/** The cell that a name of the workbook points to, on whatever sheet; undefined where there is none. */
export function cellNamed(workbook: UnreadWorkbook, name: string): SheetCell | undefined {
  const place = placeNamed(workbook, name);
  const row = place && workbook.sheets[place.sheet]?.rows().find((candidate) => candidate.row === place.row);
  return row?.cells.find(({ column }) => column === place?.column);
}
