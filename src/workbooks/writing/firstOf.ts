/**
 * The words that stand beside the first condition that holds, as a formula.
 *
 * @param otherwise - what is said where none holds
 * @example
 * firstOf([["A1<0", "below 0"], ["A1=0", "none"]], "") // → 'IF(A1<0,"below 0",IF(A1=0,"none",""))'
 */
export const firstOf = (cases: readonly (readonly [when: string, words: string])[], otherwise: string): string =>
  cases.reduceRight((rest, [when, words]) => `IF(${when},"${words}",${rest})`, `"${otherwise}"`);
