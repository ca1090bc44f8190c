import { namedLesion } from "./namedLesion.ts";

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
  "overgrown hoof",
  "orf or strawberry footrot",
  "other",
  "no lesion found",
] as const;

export type Lesion = (typeof lesions)[number];

/**
 * The standard term for a lesion: of several named together the gravest, without what is doubtful about it.
 *
 * @throws Problem that asks which, where a word is used for two lesions; listing the terms when it is not known
 * @example
 * lesionName("white-line disease") // → "shelly hoof"
 * lesionName("scald + footrot") // → "footrot"
 */
export const lesionName = (text: string): Lesion => namedLesion(text).lesion;
