/**
 * A text with a mark in place of each sign that a terminal takes for an order: to clear the screen, to change its title,
 * to write over what stands there, to turn the direction of reading. Names and cells of a file may hold such signs.
 *
 * @example
 * visible("\u001b[2Jfarm") // → "\ufffd[2Jfarm"
 */
export const visible = (text: string): string => text.replace(orders, "\ufffd");

// Control characters but for the tab and the new line (Unicode category Cc), and the overrides and isolates of direction
// (Unicode Standard Annex 9, 2).
const orders = /(?![\n\t])\p{Cc}|[\u202a-\u202e\u2066-\u2069]/gu;
