/**
 * A formula whose failure is said in words, on paper too. Where the functions are not installed, the first sheet says
 * what to do; the words are for a reader who has them.
 *
 * @example
 * orWords("FOOT.MGPCU(B2,B3,B4)", "not known")
 */
export const orWords = (formula: string, words: string): string =>
  `IFERROR(${formula},IF(ISERROR(FOOT.ABOUT()),"not worked out: see Start","${words}"))`;
