import type { Result } from "../writing/result.ts";

/**
 * What a function fills the sheet with, in a sentence.
 *
 * @example
 * resultInWords(single("share lame", "share")) // → "One cell: share lame."
 */
export function resultInWords({ shape, headings }: Result<unknown>): string {
  const parts = headings.join(", ");
  if (shape === "table") return `A table with the headings ${parts}. It fills the cells below and beside the formula.`;
  if (shape === "row") return `${headings.length} cells side by side: ${parts}.`;
  if (shape === "list") return `Cells one below the other, without a heading: ${parts}.`;
  return shape === "alongside" ? `${sentence(parts)}: one cell, or a column for a column.` : `One cell: ${parts}.`;
}

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
