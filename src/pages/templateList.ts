/** A workbook that is offered to start from. */
export interface Template {
  /** Its file in samples/, without the folder; pages find it under templates/. */
  readonly file: string;
  readonly title: string;
  readonly about: string;
}

/** Every workbook that the pages offer, in their order. */
export const templateList: readonly Template[] = [
  {
    file: "flock-foot-book-empty.xlsx",
    title: "Flock foot book",
    about: "The empty form for one flock: gathers, cases, what to do today, sale check, keep-apart list, medicine use.",
  },
  {
    file: "flock-foot-book.xlsx",
    title: "Flock foot book, filled in",
    about: "The same form filled with an invented flock, to see what it answers.",
  },
  {
    file: "visit-sheet-empty.xlsx",
    title: "Visit sheet",
    about: "The empty form for one visit to one flock.",
  },
  {
    file: "visit-sheet.xlsx",
    title: "Visit sheet, filled in",
    about: "The same form filled with an invented visit.",
  },
  {
    file: "flock-comparison-empty.xlsx",
    title: "Flock comparison",
    about: "The empty form for many flocks side by side: a row a flock.",
  },
  {
    file: "flock-comparison.xlsx",
    title: "Flock comparison, filled in",
    about: "The same form filled with thirty invented flocks.",
  },
  {
    file: "farm-records.xlsx",
    title: "Farm records",
    about: "A year of an invented flock’s records with the slips that real ones have, and the answers beside them.",
  },
];
