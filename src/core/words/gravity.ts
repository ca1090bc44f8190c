import type { Lesion } from "./lesionName.ts";

/**
 * The lesions from the gravest down, for a foot on which two were found: first what may cost the animal or the flock
 * most. Common practice, no source.
 */
export const gravity: readonly Lesion[] = [
  "joint infection",
  "contagious ovine digital dermatitis",
  "footrot",
  "white line abscess",
  "foreign body",
  "toe granuloma",
  "orf or strawberry footrot",
  "interdigital dermatitis",
  "other",
  "shelly hoof",
  "overgrown hoof",
  "no lesion found",
];
