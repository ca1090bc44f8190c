import type { Cells } from "../../cells/cell.ts";
import type { Fault } from "../../cells/fault.ts";

/**
 * Finds tags that have lost the zeros at their front: a number among tags that are written with them.
 *
 * @param place - 0-based column of the tags
 * @param spellings - rows in which every spelling stands once at least
 * @returns what to say of a tag, by its row
 * @example
 * lostZeros([["041"], [42]], 0, [0, 1]).get(1) // → { what: "zeros at the front may be lost: …", … }
 */
export function lostZeros(rows: Cells, place: number, spellings: readonly number[]): ReadonlyMap<number, Fault> {
  const found = new Map<number, Fault>();
  const width = widest(rows, place, spellings);
  // No zeros anywhere, so none are lost.
  if (width === 0) return found;
  rows.forEach((cells, row) => {
    const tag = cells[place];
    if (typeof tag !== "number" || !Number.isInteger(tag) || tag <= 0 || String(tag).length >= width) return;
    found.set(row, {
      what: `zeros at the front may be lost: ${tag} among tags such as ${String(tag).padStart(width, "0")}`,
      mend: `enter it as text, ${String(tag).padStart(width, "0")}, if that is the tag`,
    });
  });
  return found;
}

/** How many digits the longest tag has that is written with zeros at its front; 0 when none is. */
function widest(rows: Cells, place: number, spellings: readonly number[]): number {
  let width = 0;
  for (const row of spellings) {
    const tag = rows[row]?.[place];
    if (typeof tag === "string" && /^0\d{1,8}$/.test(tag.trim())) width = Math.max(width, tag.trim().length);
  }
  return width;
}
