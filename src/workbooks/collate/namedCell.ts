import type { Cell } from "../../cells/cell.ts";
import { readPlace } from "../../workbook/address.ts";
import { unquoteSheet } from "../../workbook/formula/structured.ts";
import type { UnreadWorkbook } from "../../workbook/lookInto.ts";

/** What stands in the cell that a name of the workbook points to, on whatever sheet; null when there is none. */
export function namedCell({ names, sheets }: UnreadWorkbook, name: string): Cell {
  const text = names.find((known) => known.name.toLowerCase() === name && known.sheet === undefined)?.text ?? "";
  const cut = text.lastIndexOf("!");
  const sheetName = unquoteSheet(text.slice(0, Math.max(cut, 0)));
  const place = readPlace(text.slice(cut + 1).replaceAll("$", ""));
  const sheet = sheets.find((known) => known.name === sheetName);
  if (!place || !sheet) return null;
  const row = sheet.rows().find((candidate) => candidate.row === place.row);
  return row?.cells.find(({ column }) => column === place.column)?.value ?? null;
}
