import type { Fault } from "../../cells/fault.ts";
import { lettersOf } from "./lettersOf.ts";

const footAbscess: Fault = {
  what: "may be a toe abscess (under the white line) or a heel abscess (in the joint)",
  mend: "enter toe abscess or heel abscess",
};
const strawberry: Fault = {
  what: "may be a lump at the toe or sores above the hoof",
  mend: "enter toe granuloma or strawberry footrot",
};

// Common practice, no source, but that a foot abscess may be at the heel or at the toe, which was read.
const questions: Readonly<Record<string, Fault>> = {
  "foot abscess": footAbscess,
  "foot abscesses": footAbscess,
  "white line": {
    what: "may be an abscess or a loose wall",
    mend: "enter white line abscess or shelly hoof",
  },
  fibroma: { what: "may sit at the toe or between the claws", mend: "enter toe granuloma or interdigital fibroma" },
  arthritis: { what: "may be an infected joint or an old stiff one", mend: "enter joint infection or other" },
  strawberry,
  "strawberry foot": strawberry,
  smelly: {
    what: "is a sign and no lesion",
    mend: "enter footrot if the horn is lifting, or what else was found",
  },
  swollen: { what: "does not say what", mend: "enter joint infection, heel abscess, toe abscess or other" },
};

const asked: ReadonlyMap<string, Fault> = new Map(
  Object.entries(questions).map(([words, question]) => [lettersOf(words), question]),
);

/**
 * The question to ask where a word is used for more than one lesion, to be said after the word; undefined for any other.
 *
 * @example
 * whichLesion("Fibroma")
 * // → { what: "may sit at the toe or between the claws", mend: "enter toe granuloma or interdigital fibroma" }
 * whichLesion("scald") // → undefined
 */
export const whichLesion = (text: string): Fault | undefined => asked.get(lettersOf(text));
