import type { DateOrder } from "../../../workbooks/bring/dateIn.ts";

/** The texts of bringing records into a new book. */
export const bringWords = {
  title: "Bring your records",
  intro:
    "From an older foot book, from a sheet with headings of your own or from .csv files, into a new foot book. Your files stay as they are.",
  files: "Files with records",
  farm: "Farm",
  farmHint: "May stay empty where an older book says it.",
  from: "Begin a new year on",
  fromHint: "May stay empty. Of what was before, only records of animals still in withdrawal, lame or due are brought.",
  order: "Dates such as 03/04/2026 that are kept as text",
  orders: {
    "": "stay text; the sheet Problems asks for each",
    dmy: "are day, month, year",
    mdy: "are month, day, year",
    ymd: "are year, month, day",
  } satisfies Readonly<Record<DateOrder | "", string>>,
  bring: "Bring them into a new book",
  again: "Bring them again",
  book: "foot-book.xlsx",
  noFiles: "Choose the files first.",
  noDay: "That is no day of the calendar; type the day again, or leave it empty.",
  headings: "What your headings were taken for",
  headingsAsked: "Say what your headings mean",
  headingsHint: "Change what is wrong, then bring them again.",
  leaveOut: "leave it out",
  note: "Note",
  unknown: "not known",
  report: "What became of your records",
  more: (count: number): string => `and ${count} more`,
  unreadable: (file: string): string =>
    `${file} could not be read; it may have been moved or changed after it was chosen.`,
} as const;
