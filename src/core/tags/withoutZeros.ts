/**
 * A tag key of digits only without the zeros at its front, which a cell that holds a number loses.
 *
 * @returns undefined for any other key, which keeps its zeros in every cell
 * @example
 * withoutZeros("042") // → "42"
 * withoutZeros("BLUE042") // → undefined
 */
export const withoutZeros = (key: string): string | undefined =>
  /^\d+$/.test(key) ? key.replace(/^0+/, "") : undefined;
