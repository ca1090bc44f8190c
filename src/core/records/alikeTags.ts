import type { Fault } from "../../cells/fault.ts";
import { alikeIndex } from "../words/alikeAmong.ts";
import type { Tag } from "../words/tagKey.ts";
import type { TagColumn } from "./readTags.ts";
import { alikeFault } from "./tagChecks.ts";

/**
 * Finds tags that may be one animal: each pair once, in the first row of the one that comes later.
 *
 * @param firstRow - the row that the first record is called
 * @returns what to say of a tag, by its row
 * @example
 * alikeTags({ tags: [{ key: "042", shown: "042" }], firstRows: [0] }, 1).size // → 0
 */
export function alikeTags(
  { tags, firstRows }: Pick<TagColumn, "tags" | "firstRows">,
  firstRow: number,
): ReadonlyMap<number, Fault> {
  const found = new Map<number, Fault>();
  const animals = alikeIndex<{ readonly tag: Tag; readonly index: number }>();
  for (let animal = 0; animal < tags.length; animal++) {
    const [tag, index] = [tags[animal] as Tag, firstRows[animal] as number];
    const [other] = animals.meet({ tag, index });
    if (other !== undefined) found.set(index, alikeFault(other.tag, other.index + firstRow));
  }
  return found;
}
