import { faultInWords } from "../../cells/fault.ts";
import { Problem } from "../../cells/problem.ts";
import { lesionParts } from "./lesionParts.ts";
import { lesionWords } from "./lesionWords.ts";
import { type ReadLesion, readLesion } from "./readLesion.ts";
import { whichLesion } from "./whichLesion.ts";

/**
 * What a cell says was found on a foot.
 *
 * @throws Problem that asks which, where a word is used for two lesions; listing the terms when it is not known
 * @example
 * namedLesion("scald?") // → { lesion: "interdigital dermatitis", sure: false, also: [] }
 */
export function namedLesion(text: string): ReadLesion {
  const read = readLesion(text);
  if (read !== undefined) return read;
  for (const word of [text.trim(), ...lesionParts(text)]) {
    const which = whichLesion(word);
    if (which !== undefined) throw new Problem(`"${word}" ${faultInWords(which)}`);
  }
  throw new Problem(`"${text.trim()}" is not a lesion known here; use one of: ${Object.keys(lesionWords).join(", ")}`);
}
