import type { Cell } from "../../cells/cell.ts";
import { type Fault, faultInWords } from "../../cells/fault.ts";
import { alikeAmong } from "../words/alikeAmong.ts";
import { byAnimal } from "../words/byAnimal.ts";
import { readTag } from "../words/tagFault.ts";
import type { Tag } from "../words/tagKey.ts";
import { tagReader } from "../words/tagReader.ts";

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
  const animals = byAnimal<TaggedRow>();
  const readSpelling = tagReader();
  // Each spelling is looked at once: the tags of a flock come again and again.
  const read = new Map<Cell, Fault | TaggedRow>();
  cells.forEach((cell, index) => {
    if (cell === undefined || read.has(cell)) return;
    const tag = readTag(cell, readSpelling);
    if ("what" in tag) {
      read.set(cell, tag);
      return;
    }
    const row = { tag, index };
    read.set(cell, row);
    if (animals.get(tag) === undefined) animals.set(tag, row);
  });
  const alike = alikeAmong(animals.values);
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
