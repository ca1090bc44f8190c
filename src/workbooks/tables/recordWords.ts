import type { Lesion } from "../../core/words/lesionName.ts";

/** What the list of lesions offers: the words used in the pen, each of which LESIONNAME knows. */
export const lesionWords: Readonly<Record<Lesion, string>> = {
  footrot: "footrot",
  "interdigital dermatitis": "scald",
  "contagious ovine digital dermatitis": "CODD",
  "white line abscess": "white line abscess",
  "shelly hoof": "shelly hoof",
  "toe granuloma": "toe granuloma",
  "joint infection": "joint infection",
  "foreign body": "foreign body",
  "overgrown hoof": "overgrown hoof",
  "orf or strawberry footrot": "orf",
  other: "other",
  "no lesion found": "no lesion found",
};

export const feetWords = ["LF", "RF", "LH", "RH", "all"] as const;

export const treatmentWords = [
  "injection",
  "spray",
  "injection and spray",
  "footbath",
  "pus let out",
  "pocket cleared",
  "taken out",
  "vet asked",
  "none",
] as const;
