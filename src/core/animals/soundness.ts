import { Problem } from "../../cells/problem.ts";
import { lettersOf } from "../words/lettersOf.ts";

/** What a record says of an animal. */
export type Soundness = "lame" | "sound" | "gone";

/** What people write. Common practice, no source. A treated animal was lame that day. */
export const soundnessWords: Readonly<Record<Soundness, readonly string[]>> = {
  lame: [
    "lame",
    "limping",
    "still lame",
    "lame again",
    "slightly lame",
    "mildly lame",
    "moderately lame",
    "severely lame",
    "very lame",
    "treated",
    "retreated",
    "not sound",
    "unsound",
    "not better",
    "not recovered",
  ],
  gone: ["sold", "died", "dead", "culled", "slaughtered", "put down", "left the flock"],
  sound: ["sound", "not lame", "no longer lame", "recovered", "healed", "cured", "walking sound", "fully recovered"],
};

const known: ReadonlyMap<string, Soundness> = new Map(
  (["lame", "sound", "gone"] as const).flatMap((state) =>
    soundnessWords[state].map((word) => [lettersOf(word), state] as const),
  ),
);

/**
 * Whether a record's words say lame, sound, or no longer in the flock. Yes, no and scores are refused: a heading may ask either question.
 * With a question mark an animal is not known to be sound or gone, but may well be lame.
 *
 * @throws Problem listing words that are known, or asking for another look
 * @example
 * soundness("Recovered") // → "sound"
 * soundness("lame?") // → "lame"
 */
export function soundness(text: string): Soundness {
  const found = known.get(lettersOf(text));
  if (found === undefined)
    throw new Problem(
      `"${text.trim()}" does not say lame or sound; use a word such as "lame", "treated", "still lame", "sound", "recovered" or "sold"`,
    );
  if (found !== "lame" && text.includes("?"))
    throw new Problem(`"${text.trim()}" is not sure; look at the animal and enter what it is, without a question mark`);
  return found;
}
