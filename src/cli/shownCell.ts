import type { Cell } from "../cells/cell.ts";
import { isCellError } from "../cells/cell.ts";
import { showMoment } from "../cells/day.ts";
import type { Format } from "../writing/format.ts";

const asNumber: Partial<Record<Format, (value: number) => string>> = {
  share: (value) => `${(value * 100).toFixed(1)} %`,
  date: showMoment,
  "date and time": showMoment,
  rate: (value) => value.toFixed(2),
  "p value": (value) => value.toFixed(3),
};

/**
 * A cell's value as a line of text shows it.
 *
 * @example
 * shownCell(0.0461, "share") // → "4.6 %"
 */
export function shownCell(cell: Cell, format: Format | undefined): string {
  if (cell === null) return "";
  if (isCellError(cell)) return cell.error;
  if (typeof cell === "number") return (format && asNumber[format]?.(cell)) ?? String(Number(cell.toPrecision(10)));
  return typeof cell === "boolean" ? (cell ? "yes" : "no") : cell;
}
