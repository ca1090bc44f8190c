import type { Cell } from "../../cells/cell.ts";
import { type Fault, faultInWords } from "../../cells/fault.ts";
import { alikeAmong } from "../words/alikeAmong.ts";
import { readTag } from "../words/tagFault.ts";
import type { Tag } from "../words/tagKey.ts";

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
  const animals = new Map<string, TaggedRow>();
  // Each spelling is looked at once: the tags of a flock come again and again.
  const read = new Map<Cell, Fault | TaggedRow>();
  cells.forEach((cell, index) => {
    if (cell === undefined || read.has(cell)) return;
    const key = readTag(cell);
    if (typeof key !== "string") {
      read.set(cell, key);
      return;
    }
    const tag = { key, shown: String(cell).trim() };
    const row = { tag, index };
    read.set(cell, row);
    if (!animals.has(tag.key)) animals.set(tag.key, row);
  });
  const alike = alikeAmong(animals.values());
  const answers = new Map<Cell, string>();
  for (const [cell, found] of read)
    answers.set(cell, "tag" in found ? checked(alike(found.tag), rowOf) : faultInWords(found));
  return cells.map((cell) => (cell === undefined ? "" : (answers.get(cell) ?? "")));
}

interface TaggedRow {
  readonly tag: Tag;
  readonly index: number;
}

const checked = ([other]: readonly TaggedRow[], rowOf: (index: number) => number): string =>
  other === undefined ? "ok" : faultInWords(alikeFault(other.tag, rowOf(other.index)));
