import { type Cell, type Cells, isBlankCell } from "../../cells/cell.ts";
import type { Fault } from "../../cells/fault.ts";
import { alikeAmong } from "../tags/alikeAmong.ts";
import { alikeFault } from "../tags/tagChecks.ts";
import { tagFault } from "../tags/tagFault.ts";
import { type Tag, tagKey } from "../tags/tagKey.ts";

/**
 * Finds tags that may be one animal: each pair once, in the first row of the one that comes later.
 *
 * @param place - 0-based column of the tags; undefined when there is none
 * @returns a check for the tag of one row
 * @example
 * alikeTags([["042"], ["O42"]], 0)(1) // → { what: "it may be 042, row 1", mend: "look at both, and …" }
 */
export function alikeTags(rows: Cells, place: number | undefined): (index: number) => Fault | undefined {
  if (place === undefined) return () => undefined;
  const animals = new Map<string, { readonly tag: Tag; readonly index: number }>();
  const read = new Set<Cell>();
  rows.forEach((row, index) => {
    const cell = row[place] ?? null;
    // The same tag comes again and again, and its first row is the one that counts.
    if (read.has(cell) || isBlankCell(cell) || cell === 0) return;
    read.add(cell);
    if (tagFault(cell) !== undefined) return;
    const tag = { key: tagKey(cell as string | number), shown: String(cell).trim() };
    if (!animals.has(tag.key)) animals.set(tag.key, { tag, index });
  });
  const alike = alikeAmong(animals.values());
  const faults = new Map<number, Fault>();
  for (const { tag, index } of animals.values()) {
    const other = alike(tag).find((found) => found.index < index);
    if (other !== undefined) faults.set(index, alikeFault(other.tag, other.index + 1));
  }
  return (index) => faults.get(index);
}
