/**
 * A word as it is looked up: its letters and nothing else, small.
 *
 * @example
 * lettersOf(" Foot-Rot 2") // → "footrot"
 */
export const lettersOf = (text: string): string => text.toLowerCase().replace(/[^\p{L}]/gu, "");
