/**
 * How many cells of a range show something. COUNTA counts a formula that gives an empty text, too.
 *
 * @example
 * filledIn("A1:A9") // → "SUMPRODUCT((LEN(A1:A9)>0)*1)"
 */
export const filledIn = (range: string): string => `SUMPRODUCT((LEN(${range})>0)*1)`;
