import { readLesion } from "./readLesion.ts";
import { showLesion } from "./showLesion.ts";

/** Words that are no known lesion are called this, never dropped. */
const notRecognised = "not recognised";

/**
 * The standard name for a lesion as it was written down, with the doubt it was written down with; of several the gravest.
 *
 * @example
 * lesionWritten("scald?") // → "interdigital dermatitis, not sure"
 * lesionWritten("limping") // → "not recognised"
 */
export function lesionWritten(word: string): string {
  const read = readLesion(word);
  return read === undefined ? notRecognised : showLesion({ lesion: read.lesion, sure: read.sure, also: [] });
}
