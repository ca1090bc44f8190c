import { showCell } from "../../cells/cell.ts";
import type { Fault } from "../../cells/fault.ts";

/** Words that stand where a tag is not known. Common practice, no source. */
const noTag = new Set(
  "as above,as before,check,ditto,do,ear tag lost,idem,lost,lost tag,missing,n a,nil,no,no ear tag,no tag,none,not known,not read,same,same as above,same as row above,see above,see below,see note,see notes,tag lost,tag missing,tba,tbc,to follow,unknown,unreadable,untagged,x,yes".split(
    ",",
  ),
);

// "1/12" is one tag, and so is "1-12".
const several = /\d\s*(?:&|\+|;|,\s|AND|OR|TO\b)\s*(?:[A-Z]{2}\s*)?\d|\d{5}\W+[A-Z]{2}[\d ]{8}|\d{15}\D+\d{15}/;

/**
 * What is wrong with a text that stands for no animal in particular: it says that the tag is not known or not sure, or names several.
 * Taken for a tag, "ditto" would be an animal of its own, and what was done to it be in nobody's record.
 *
 * @param typed - in capitals
 * @param shown - as it was written, to be quoted
 * @example
 * noOneTag("DITTO", "ditto") // → { what: '"ditto" is no tag', mend: "enter the tag of the animal" }
 * noOneTag("041 AND 042", "041 and 042")
 * // → { what: '"041 and 042" names more than one animal', mend: "give each animal a row of its own" }
 * noOneTag("04?", "04?") // → { what: '"04?" is not sure', mend: "look at the animal's tag and enter it without a question mark" }
 */
export function noOneTag(typed: string, shown: string): Fault | undefined {
  const words = (typed.match(/\p{L}+|\d+/gu) ?? []).join(" ").toLowerCase();
  if (noTag.has(words)) return { what: `${showCell(shown)} is no tag`, mend: "enter the tag of the animal" };
  // Nobody can say whose it is: the mark may stand for a digit, or be meant for the whole.
  if (typed.includes("?"))
    return {
      what: `${showCell(shown)} is not sure`,
      mend: "look at the animal's tag and enter it without a question mark",
    };
  return several.test(typed)
    ? { what: `${showCell(shown)} names more than one animal`, mend: "give each animal a row of its own" }
    : undefined;
}
