import { answer } from "./answer.ts";

// What the script file needs from the bundle: the functions in it are one line each and call this.

declare const SpreadsheetApp: {
  readonly getActiveSpreadsheet: () => { readonly getSpreadsheetTimeZone: () => string };
};

/** Answers a call of the function `name` with the arguments as Sheets handed them over. */
export const call = (name: string, given: ArrayLike<unknown>): unknown =>
  answer(name, Array.from(given) as never, () => SpreadsheetApp.getActiveSpreadsheet().getSpreadsheetTimeZone());
