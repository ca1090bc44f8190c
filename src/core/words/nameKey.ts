/**
 * A name without capitals and needless spaces, which do not make another name.
 *
 * @example
 * nameKey(" Low  Field") // → "low field"
 */
export const nameKey = (name: string): string => name.trim().replace(/\s+/g, " ").toLowerCase();
