/** What is said of a list that has more lines than are shown; the first sheet says what to do. */
export const cutOffWords = "CUT OFF: the list is longer than what stands here (see Start).";

/**
 * Says when a list has more lines than the cells it was saved with, as in a spreadsheet that never makes a list longer:
 * an animal that is not on the list must not pass for one that is clear.
 *
 * @param list - the formula of the list, without `=`; a list that fails is not cut off
 * @param cells - the cells that the list may fill, from its first on
 */
export const cutOff = (list: string, cells: string): string =>
  `IF(IFERROR(ROWS(${list}),0)>COUNTA(${cells}),"${cutOffWords}","")`;
