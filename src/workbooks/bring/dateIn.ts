import { type Cell, isCellError } from "../../cells/cell.ts";
import { firstDay, lastDay, type Moment, momentFromText } from "../../cells/day.ts";

/** The order of the parts in dates that are written in numbers, as the person says it. */
export const dateOrders = ["dmy", "mdy", "ymd"] as const;
export type DateOrder = (typeof dateOrders)[number];

const inNumbers = /^(\d{1,4})[./-](\d{1,2})[./-](\d{1,4})$/;

/**
 * The day in a cell, where it is one without doubt.
 *
 * @param dayOffset - added to a number to get its serial in the 1900 system
 * @param order - what 03/04/2026 means; unknown when left out
 * @returns undefined where it is none, or could be two
 * @example
 * dateIn("03/04/2026", 0, "dmy") // → 46115
 * dateIn("03/04/2026", 0) // → undefined
 */
export function dateIn(cell: Cell, dayOffset: number, order?: DateOrder): Moment | undefined {
  const day =
    typeof cell === "number"
      ? cell + dayOffset
      : typeof cell === "string" && !isCellError(cell)
        ? (momentFromText(cell) ?? (order && inOrder(cell.trim(), order)))
        : undefined;
  return day !== undefined && day >= firstDay && day < lastDay + 1 ? day : undefined;
}

function inOrder(text: string, order: DateOrder): Moment | undefined {
  const parts = inNumbers.exec(text)?.slice(1);
  if (!parts) return undefined;
  const part = (letter: string): string => parts[order.indexOf(letter)] ?? "";
  const [year, month, day] = ["y", "m", "d"].map(part) as [string, string, string];
  // Of two digits the century is not known, though nobody keeps records of 1926.
  const whole = year.length === 2 ? `20${year}` : year;
  return momentFromText(`${whole}-${month.padStart(2, "0")}-${day.padStart(2, "0")}`);
}
