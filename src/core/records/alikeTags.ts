import type { Cells } from "../../cells/cell.ts";
import type { Fault } from "../../cells/fault.ts";
import { alikeIndex } from "../words/alikeAmong.ts";
import type { Tag } from "../words/tagKey.ts";
import type { TagColumn } from "./readTags.ts";
import { alikeFault } from "./tagChecks.ts";

/**
 * Finds tags that may be one animal: each pair once, in the first row of the one that comes later.
 *
 * @param place - 0-based column of the tags
 * @param firstRow - the row that the first record is called
 * @returns what to say of a tag, by its row
 * @example
 * alikeTags([["042"]], 0, { values: ["042"], faults: new Map(), animals: [0], firstRows: [0], newSpellings: [0] }, 1).size // → 0
 */
export function alikeTags(
  rows: Cells,
  place: number,
  { values, firstRows }: TagColumn,
  firstRow: number,
): ReadonlyMap<number, Fault> {
  const found = new Map<number, Fault>();
  const animals = alikeIndex<{ readonly tag: Tag; readonly index: number }>();
  for (const index of firstRows) {
    const tag = { key: values[index] as string, shown: String(rows[index]?.[place]).trim() };
    const [other] = animals.meet({ tag, index });
    if (other !== undefined) found.set(index, alikeFault(other.tag, other.index + firstRow));
  }
  return found;
}
