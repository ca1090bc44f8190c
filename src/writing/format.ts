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
