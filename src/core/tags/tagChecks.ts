import type { Cell } from "../../cells/cell.ts";
import { type Fault, faultInWords } from "../../cells/fault.ts";
import { alikeAmong } from "./alikeAmong.ts";
import { tagFault } from "./tagFault.ts";
import { type Tag, tagKey } from "./tagKey.ts";

/** Two tags that may be one animal. */
export const alikeFault = (other: Tag, row: number): Fault => ({
  what: `it may be ${other.shown}, row ${row}`,
  mend: "look at both, and write one animal's tag in one way",
});

/**
 * Whether each tag is written so that it can be told from others: "ok", or what is wrong with it; blank for none.
 *
 * @param rowOf - the row of the sheet for a place in the column
 * @example
 * tagChecks(["042", "O42"], (index) => index + 1)[0]
 * // → "it may be O42, row 2; look at both, and write one animal's tag in one way"
 */
export function tagChecks(cells: readonly (Cell | undefined)[], rowOf: (index: number) => number): readonly string[] {
  const animals = new Map<string, { readonly tag: Tag; readonly index: number }>();
  const faults = cells.map((cell, index) => {
    const fault = cell === undefined ? undefined : tagFault(cell);
    if (fault !== undefined || cell === undefined) return fault;
    const key = tagKey(cell as string | number);
    if (!animals.has(key)) animals.set(key, { tag: { key, shown: String(cell).trim() }, index });
    return undefined;
  });
  const alike = alikeAmong(animals.values());
  return cells.map((cell, index) => {
    if (cell === undefined) return "";
    const fault =
      faults[index] ?? fromAlike(alike({ key: tagKey(cell as string | number), shown: String(cell).trim() }), rowOf);
    return fault === undefined ? "ok" : faultInWords(fault);
  });
}

const fromAlike = (
  [other]: readonly { readonly tag: Tag; readonly index: number }[],
  rowOf: (index: number) => number,
): Fault | undefined => other && alikeFault(other.tag, rowOf(other.index));
