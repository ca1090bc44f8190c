import { isOneSlip } from "./isOneSlip.ts";
import type { Lesion } from "./lesionName.ts";
import { lesionWords } from "./lesionWords.ts";
import { lettersOf } from "./lettersOf.ts";
import { otherWords } from "./otherWords.ts";
import { whichLesion } from "./whichLesion.ts";

/** One lesion as a word names it. */
export interface FoundWord {
  readonly lesion: Lesion;
  /** The known word that was meant, where the one written differs from it by a slip of the hand. */
  readonly readAs?: string;
}

const plural = (letters: string): string =>
  letters.endsWith("y") ? `${letters.slice(0, -1)}ies` : /(?:s|x|ch)$/.test(letters) ? `${letters}es` : `${letters}s`;

interface KnownWord {
  readonly lesion: Lesion;
  readonly word: string;
  readonly letters: string;
}

const words: readonly KnownWord[] = Object.entries(lesionWords).flatMap(([lesion, written]) =>
  written.flatMap((word) =>
    [lettersOf(word), plural(lettersOf(word))].map((letters) => ({ lesion: lesion as Lesion, word, letters })),
  ),
);

const known: ReadonlyMap<string, FoundWord> = new Map(words.map(({ lesion, letters }) => [letters, { lesion }]));

/** Shorter words have too many neighbours that mean something else. */
const fewestLetters = 5;
const isLong = ({ word }: KnownWord): boolean => lettersOf(word).length >= fewestLetters;

/**
 * The lesion that a word names, its plural and its one slip of the hand included; undefined when it is not known.
 *
 * A slip is taken only where one lesion alone is near and the word is no other one, and never for "no lesion found": a
 * word that nobody can read is no all-clear.
 *
 * @example
 * findLesionWord("Abscesses") // → { lesion: "white line abscess" }
 * findLesionWord("abcess") // → { lesion: "white line abscess", readAs: "abscess" }
 * findLesionWord("soind") // → undefined
 */
export function findLesionWord(text: string): FoundWord | undefined {
  const letters = lettersOf(text);
  const exact = known.get(letters);
  if (exact !== undefined) return exact;
  if (letters.length < fewestLetters || otherWords.has(letters) || whichLesion(text) !== undefined) return undefined;
  const near = words.filter((word) => isOneSlip(letters, word.letters));
  const meant = near.find(isLong);
  if (meant === undefined || meant.lesion === "no lesion found") return undefined;
  return near.every(({ lesion }) => lesion === meant.lesion) ? { lesion: meant.lesion, readAs: meant.word } : undefined;
}
