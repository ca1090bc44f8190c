const longest = 400;
const kept = { start: 300, end: 80 } as const;

/**
 * A sentence without the middle of what it quotes, where that is longer than anyone reads: its beginning says what is
 * wrong, its end how to mend it.
 *
 * @example
 * clipped(`the name ${"x".repeat(40_000)} is not there`).length // → 383
 */
export const clipped = (sentence: string): string =>
  sentence.length > longest ? `${sentence.slice(0, kept.start)} … ${sentence.slice(-kept.end)}` : sentence;
