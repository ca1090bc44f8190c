/** What a page asks of the spreadsheet it stands beside, to put a formula into it. */
export interface FormulaSheet {
  /** The selected cells, with their sheet: `Gathers!B2:B14`. */
  readonly selected: () => Promise<string>;
  /** What a cell shows; "" for an empty one. */
  readonly shown: (cell: string) => Promise<string>;
  readonly write: (cell: string, formula: string) => Promise<void>;
  /** What went wrong, in words for the person. */
  readonly inWords: (error: unknown) => string;
}
