/** How a result is shown where the spreadsheet lets a function say so. */
export const formats = {
  text: "General",
  number: "General",
  count: "0",
  share: "0.0%",
  date: "d mmm yyyy",
  "date and time": "d mmm yyyy hh:mm",
  days: "0",
  ml: "0.0##",
  rate: "0.00",
  "p value": "0.000",
} as const;

export type Format = keyof typeof formats;

/**
 * The number format that shows a result: a date with an hour shows its hour, words need none.
 *
 * @example
 * patternFor("share", 0.2) // → "0.0%"
 * patternFor("date", 46091.4375) // → "d mmm yyyy hh:mm"
 */
export function patternFor(format: Format, value: unknown): string {
  if (typeof value !== "number") return formats.text;
  return format === "date" && !Number.isInteger(value) ? formats["date and time"] : formats[format];
}
