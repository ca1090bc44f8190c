import { findLesionWord } from "./findLesionWord.ts";
import { gravity } from "./gravity.ts";
import type { Lesion } from "./lesionName.ts";
import { lesionParts } from "./lesionParts.ts";

/** One lesion as it was written down, with what is doubtful about it. */
export interface NamedLesion {
  readonly lesion: Lesion;
  /** Whether it was written down without a question mark or a word of doubt. */
  readonly sure: boolean;
  /** The known word that was meant, where the one written differs from it by a slip of the hand. */
  readonly readAs?: string;
}

/** What a cell says was found: one lesion, or the gravest of several. */
export interface ReadLesion extends NamedLesion {
  /** The others that were named with it, the gravest first. */
  readonly also: readonly NamedLesion[];
}

const doubt =
  /\?|\b(?:not sure|unsure|not certain|maybe|perhaps|poss|possible|possibly|prob|probable|probably|susp|suspect|suspected|query)\b/g;
/** Words that say that there was something, and nothing more. */
const unnamed = /^(?:not sure|unsure|not known|unknown)\??$/;

/**
 * What a cell says was found on a foot; undefined when a word in it is not known.
 *
 * A question mark, or a word such as "maybe", is kept as doubt. Of several lesions the gravest stands first; where they
 * are named with "or" or a slash, which is read as either word, all are in doubt. It reads back what `showLesion` writes.
 *
 * @example
 * readLesion("scald?") // → { lesion: "interdigital dermatitis", sure: false, also: [] }
 * readLesion("scald + footrot")
 * // → { lesion: "footrot", sure: true, also: [{ lesion: "interdigital dermatitis", sure: true }] }
 */
export function readLesion(text: string): ReadLesion | undefined {
  const whole = text.includes("?") ? undefined : findLesionWord(text);
  if (whole !== undefined && whole.readAs === undefined) return { ...whole, sure: true, also: [] };
  const parts = lesionParts(text).map(readPart);
  const named = new Map<Lesion, NamedLesion>();
  for (const part of parts) {
    if (part === undefined) return undefined;
    // What is named twice, and once without doubt, is sure.
    if (named.get(part.lesion)?.sure !== true) named.set(part.lesion, part);
  }
  const eitherOr = named.size > 1 && /\bor\b(?! strawberry)|\//i.test(text);
  const [first, ...also] = gravity
    .flatMap((lesion) => named.get(lesion) ?? [])
    .map((lesion) => (eitherOr ? { ...lesion, sure: false } : lesion));
  return first && { ...first, also };
}

function readPart(part: string): NamedLesion | undefined {
  if (unnamed.test(part)) return { lesion: "other", sure: false };
  const word = part.replace(doubt, " ").trim();
  const found = findLesionWord(word);
  return found && { ...found, sure: word === part };
}
