import { type Template, templateList } from "../templateList.ts";

/** The workbook that is open when nothing else is asked for. */
export const firstBook = "flock-foot-book.xlsx";

// Those that are filled in would double the size of the page; one of them shows what is answered.
const offered: ReadonlySet<string> = new Set([
  "flock-foot-book-empty.xlsx",
  "visit-sheet-empty.xlsx",
  "flock-comparison-empty.xlsx",
  firstBook,
]);

/** The workbooks that the sheet brings. */
export const offeredBooks: readonly Template[] = templateList.filter(({ file }) => offered.has(file));
