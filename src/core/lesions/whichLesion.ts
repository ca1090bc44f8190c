import { lettersOf } from "./lettersOf.ts";

// Common practice, no source, but that a foot abscess may be at the heel or at the toe, which was read.
const questions: Readonly<Record<string, string>> = {
  "foot abscess":
    "may be a toe abscess (under the white line) or a heel abscess (in the joint); enter toe abscess or heel abscess",
  "foot abscesses":
    "may be a toe abscess (under the white line) or a heel abscess (in the joint); enter toe abscess or heel abscess",
  "white line": "may be an abscess or a loose wall; enter white line abscess or shelly hoof",
  fibroma: "may sit at the toe or between the claws; enter toe granuloma or interdigital fibroma",
  arthritis: "may be an infected joint or an old stiff one; enter joint infection or other",
  strawberry: "may be a lump at the toe or sores above the hoof; enter toe granuloma or strawberry footrot",
  "strawberry foot": "may be a lump at the toe or sores above the hoof; enter toe granuloma or strawberry footrot",
  smelly: "is a sign and no lesion; enter footrot if the horn is lifting, or what else was found",
  swollen: "does not say what; enter joint infection, heel abscess, toe abscess or other",
};

const asked: ReadonlyMap<string, string> = new Map(
  Object.entries(questions).map(([words, question]) => [lettersOf(words), question]),
);

/**
 * The question to ask where a word is used for more than one lesion; undefined for any other word.
 *
 * @example
 * whichLesion("Foot abscess") // → "may be a toe abscess (under the white line) or a heel abscess …"
 * whichLesion("scald") // → undefined
 */
export const whichLesion = (text: string): string | undefined => asked.get(lettersOf(text));
