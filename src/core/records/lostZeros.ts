import type { Cell, Cells } from "../../cells/cell.ts";
import type { Fault } from "../../cells/fault.ts";

/**
 * Finds tags that have lost the zeros at their front: a number among tags that are written with them.
 *
 * @param place - 0-based column of the tags; undefined when there is none
 * @returns a check for one tag
 * @example
 * lostZeros([["041"], [42]], 0)(42) // → { what: "zeros at the front may be lost: …", … }
 */
export function lostZeros(rows: Cells, place: number | undefined): (tag: Cell) => Fault | undefined {
  let width = 0;
  if (place !== undefined)
    for (const row of rows) {
      const tag = row[place];
      if (typeof tag === "string" && /^0\d{1,8}$/.test(tag.trim())) width = Math.max(width, tag.trim().length);
    }
  return (tag) => {
    if (typeof tag !== "number" || !Number.isInteger(tag) || tag <= 0 || String(tag).length >= width) return undefined;
    return {
      what: `zeros at the front may be lost: ${tag} among tags such as ${String(tag).padStart(width, "0")}`,
      mend: `enter it as text, ${String(tag).padStart(width, "0")}, if that is the tag`,
    };
  };
}
