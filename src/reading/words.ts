import type { Cell } from "../cells/cell.ts";
import { isBlankCell, showCell } from "../cells/cell.ts";
import type { Fault } from "../cells/fault.ts";
import { Problem } from "../cells/problem.ts";
import { type Soundness, soundness } from "../core/animals/soundness.ts";
import { noTag } from "../core/words/faults.ts";
import { type Foot, footNames } from "../core/words/footNames.ts";
import { namedLesion } from "../core/words/namedLesion.ts";
import type { ReadLesion } from "../core/words/readLesion.ts";
import { notATag } from "../core/words/tagFault.ts";
import type { Tag } from "../core/words/tagKey.ts";
import { tagReader } from "../core/words/tagReader.ts";
import { type CellKind, defineKind, missingIn, Refusal, refuse } from "./kind.ts";

// Some spreadsheets hand over a blank cell as 0, and no tag and no lesion is called 0.
const isBlankOrZero = (cell: Cell): boolean => cell === 0 || isBlankCell(cell);

const textIn = (cell: Cell): string => (typeof cell === "boolean" ? (cell ? "TRUE" : "FALSE") : String(cell)).trim();

/** Any text; a number is read as its digits. White space around it is left out. */
export const text = (what = "text"): CellKind<string> =>
  defineKind({ wanted: what, holds: "text", read: textIn, remember: "all" });

/** The name of a product, or of anything else where a 0 can only be a blank cell. */
export const nameText = (what: string): CellKind<string> =>
  defineKind({ wanted: what, holds: "text", isBlank: isBlankOrZero, read: textIn, remember: "all" });

/** An animal, by its tag; two spellings of one tag are one animal. */
export const tag: CellKind<Tag> = defineKind<Tag>({
  wanted: "a tag as text",
  missing: noTag,
  holds: "text",
  isBlank: isBlankOrZero,
  remember: "all",
  read: (cell) => tagIn(tagReader(), cell),
  readAmongOthers() {
    const read = tagReader();
    return (cell) => tagIn(read, cell);
  },
});

function tagIn(read: (written: string | number) => Tag, cell: Cell): Tag {
  if (typeof cell !== "string" && typeof cell !== "number") throw new Refusal(notATag(cell));
  return withoutPlace(read, cell);
}

/** A lesion by any of its usual names, with what is doubtful about it. */
export const lesion: CellKind<ReadLesion> = defineKind<ReadLesion>({
  wanted: "the name of a lesion",
  holds: "text",
  isBlank: isBlankOrZero,
  remember: "all",
  read: (cell) => withoutPlace(namedLesion, textIn(cell)),
});

/** One foot or several, by any of their usual names. */
export const footList: CellKind<readonly Foot[]> = defineKind<readonly Foot[]>({
  wanted: "the feet: LF, RF, LH, RH, several as LF, RH, or all",
  holds: "text",
  isBlank: isBlankOrZero,
  remember: "all",
  read: (cell) => withoutPlace(footNames, textIn(cell)),
});

/** Whether a record says lame, sound, or no longer in the flock. */
export const soundnessWord: CellKind<Soundness> = defineKind<Soundness>({
  wanted: 'a word such as "lame", "treated", "sound" or "recovered"',
  holds: "text",
  isBlank: isBlankOrZero,
  remember: "all",
  read: (cell) => withoutPlace(soundness, textIn(cell)),
});

/** Yes or no, in the ways people write it. */
export const yesNo: CellKind<boolean> = defineKind({
  wanted: "TRUE or FALSE (yes/no, y/n and 1/0 will do)",
  holds: "yes/no",
  words: ["TRUE", "FALSE"],
  read(cell) {
    const word = textIn(cell).toLowerCase();
    if (["true", "yes", "y", "1"].includes(word)) return true;
    if (["false", "no", "n", "0"].includes(word)) return false;
    throw refuse(cell, "is neither yes nor no", "TRUE or FALSE");
  },
});

/** One of a few fixed words; case and surrounding spaces do not matter. */
export const choice = <const W extends readonly string[]>(...words: W): CellKind<W[number]> =>
  choiceOr(words, () => undefined);

/**
 * One of a few fixed words, where some others have an answer of their own.
 *
 * @param answer - what is wrong with a word that is no choice, beginning with a verb; undefined for the usual sentence
 */
export const choiceOr = <const W extends readonly string[]>(
  words: W,
  answer: (typed: string) => Fault | undefined,
): CellKind<W[number]> => {
  const wanted = `one of: ${words.map((word) => `"${word}"`).join(", ")}`;
  return defineKind<W[number]>({
    wanted,
    holds: "text",
    words,
    read(cell) {
      const typed = textIn(cell).toLowerCase();
      const word = words.find((known) => known.toLowerCase() === typed);
      if (word !== undefined) return word;
      const said = answer(typed);
      throw said === undefined
        ? refuse(cell, "is not a choice here", wanted)
        : new Refusal({ what: `${showCell(cell)} ${said.what}`, mend: said.mend });
    },
  });
};

/** The cell as it was handed over, for functions that report on the cell itself. */
export const asHandedOver: CellKind<Cell> = {
  wanted: "any cell",
  missing: missingIn("any cell"),
  holds: "anything",
  isBlank: () => false,
  read: (cell) => cell,
  columnReader: () => (cell) => cell,
};

/** A filled cell as it was handed over, even an error; blank cells are left out as they are for tags. */
export const anyCell: CellKind<Cell> = {
  ...asHandedOver,
  isBlank: isBlankOrZero,
  columnReader: () => (cell) => (isBlankOrZero(cell) ? undefined : cell),
};

function withoutPlace<G, T>(work: (given: G) => T, given: G): T {
  try {
    return work(given);
  } catch (error) {
    if (error instanceof Problem) throw new Refusal(error.fault);
    throw error;
  }
}
