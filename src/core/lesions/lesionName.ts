import { Problem } from "../../cells/problem.ts";

/** The lesions that the functions know, by their standard terms. */
export const lesions = [
  "interdigital dermatitis",
  "footrot",
  "contagious ovine digital dermatitis",
  "white line abscess",
  "shelly hoof",
  "toe granuloma",
  "joint infection",
  "foreign body",
  "other",
  "no lesion",
] as const;

export type Lesion = (typeof lesions)[number];

/** What people write for each. Common practice, no source. Letters only: case, spaces and hyphens do not matter. */
const synonyms: Readonly<Record<Lesion, readonly string[]>> = {
  "interdigital dermatitis": [
    "ID",
    "scald",
    "foot scald",
    "strip",
    "OID",
    "ovine interdigital dermatitis",
    "benign footrot",
  ],
  footrot: [
    "FR",
    "foot rot",
    "virulent footrot",
    "severe footrot",
    "footrot severe",
    "SFR",
    "under-run footrot",
    "underrun",
    "footrott",
  ],
  "contagious ovine digital dermatitis": ["CODD", "contagious digital dermatitis", "contagious ovine dermatitis"],
  "white line abscess": ["WLA", "toe abscess", "foot abscess", "abscess", "hoof abscess"],
  // White line disease of sheep is shelly hoof, though that of cattle is mostly an abscess: Veterinary Sciences 2021 8:116.
  "shelly hoof": [
    "SH",
    "shelly",
    "shelly toe",
    "WLD",
    "white line disease",
    "white line degeneration",
    "white line separation",
    "wall separation",
  ],
  "toe granuloma": ["TG", "granuloma", "toe fibroma", "fibroma", "strawberry toe", "proud flesh"],
  "joint infection": [
    "joint ill",
    "joint",
    "septic joint",
    "pedal joint infection",
    "septic pedal arthritis",
    "arthritis",
    "infected joint",
  ],
  "foreign body": ["thorn", "stone", "nail", "splinter", "puncture"],
  other: ["other lesion", "injury", "wound", "something else", "unknown", "not known", "not sure"],
  "no lesion": [
    "none",
    "sound",
    "ok",
    "clean",
    "healthy",
    "nothing",
    "nothing seen",
    "normal",
    "nil",
    "no lesion seen",
  ],
};

const lettersOf = (text: string): string => text.toLowerCase().replace(/[^\p{L}]/gu, "");

const known: ReadonlyMap<string, Lesion> = new Map(
  lesions.flatMap((lesion) => [lesion, ...synonyms[lesion]].map((word) => [lettersOf(word), lesion] as const)),
);

/**
 * The standard term for a lesion, however it was written; undefined when the word is not known.
 *
 * @example
 * findLesion(" Scald") // → "interdigital dermatitis"
 * findLesion("limping") // → undefined
 */
export const findLesion = (text: string): Lesion | undefined => known.get(lettersOf(text));

/**
 * The standard term for a lesion.
 *
 * @throws Problem listing the terms when the word is not known
 * @example
 * lesionName("white-line disease") // → "shelly hoof"
 */
export function lesionName(text: string): Lesion {
  const found = findLesion(text);
  if (found === undefined)
    throw new Problem(`"${text.trim()}" is not a lesion known here; use one of: ${lesions.join(", ")}`);
  return found;
}
