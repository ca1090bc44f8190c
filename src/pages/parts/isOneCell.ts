const oneCell = /^(?:'(?:[^']|'')+'!|[^'!:()]+!)?\$?[A-Z]{1,3}\$?[1-9]\d{0,6}$/i;

/**
 * Whether a text names one cell, with or without its sheet.
 *
 * @example
 * isOneCell("'My flock'!B2") // → true
 */
export const isOneCell = (text: string): boolean => oneCell.test(text.trim());
