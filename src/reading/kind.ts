import type { Cell } from "../cells/cell.ts";
import { isBlankCell, isCellError, showCell } from "../cells/cell.ts";
import { type Fault, faultInWords } from "../cells/fault.ts";
import { cellError } from "../core/words/faults.ts";

/** What a reader may need to know about the spreadsheet that hands over the cells. */
export interface ReadOptions {
  /** Added to a date's number to get its 1900-system serial: 0, or 1462 for a workbook in the 1904 system. */
  readonly dayOffset: number;
  /**
   * The cell that is meant by an object which the spreadsheet hands over: an error, or a value with its format. Left out
   * where cells come as they are.
   */
  readonly cellOf?: ((handedOver: unknown) => Cell) | undefined;
}

/** Why one cell was refused; the column reader adds argument and row. */
export class Refusal extends Error {
  readonly fault: Fault;

  constructor(fault: Fault) {
    super(faultInWords(fault));
    this.fault = fault;
  }
}

/** How one cell becomes one checked value. */
export interface CellKind<T> {
  /** What belongs in the cell, in plain words: "a whole number of sheep, 0 or more". */
  readonly wanted: string;
  /** What is said of a blank in a row that holds a record. */
  readonly missing: Fault;
  /** Whether the cell counts as not filled in. */
  readonly isBlank: (cell: Cell) => boolean;
  /** @throws Refusal when the cell holds something else */
  readonly read: (cell: Cell, options: ReadOptions) => T;
  /**
   * A reader for a pass down a column, or down several of one call, which gives undefined for a blank cell; kinds with
   * costly spelling rules keep a memory of what they have read.
   */
  readonly columnReader: (options: ReadOptions) => (cell: Cell) => T | undefined;
  /** The whole numbers that stand for themselves; a day's number once the days of the date system are added. */
  readonly plain?: WholeNumbers;
  /** The fixed words that are accepted, for pick lists. */
  readonly words?: readonly string[];
  /** Written into Google Sheets and Calc descriptions: what a user should put in. */
  readonly holds: "number" | "text" | "yes/no" | "date" | "anything";
}

/** All whole numbers from one to another. */
export interface WholeNumbers {
  readonly least: number;
  readonly most: number;
}

interface KindRules<T> {
  readonly wanted: string;
  readonly missing?: Fault;
  readonly holds: CellKind<T>["holds"];
  readonly isBlank?: (cell: Cell) => boolean;
  readonly read: (cell: Cell, options: ReadOptions) => T;
  /** Another for cells that are remembered, made anew for each memory: what it gives may tell of those read before. */
  readonly readAmongOthers?: () => (cell: Cell) => T;
  readonly words?: readonly string[];
  /** Equal cells give an equal value, so each spelling is worked out once a column; numbers too where they are spellings. */
  readonly remember?: "all" | "texts";
  readonly plain?: CellKind<T>["plain"];
}

export function defineKind<T>(rules: KindRules<T>): CellKind<T> {
  const read = unlessError(rules.read);
  const isBlank = rules.isBlank ?? isBlankCell;
  return {
    wanted: rules.wanted,
    missing: rules.missing ?? missingIn(rules.wanted),
    holds: rules.holds,
    isBlank,
    read,
    columnReader(options) {
      const readCell = (cell: Cell): T | undefined => (isBlank(cell) ? undefined : read(cell, options));
      if (rules.remember === undefined) return readCell;
      const among = rules.readAmongOthers;
      const remembered = remembering({ isBlank, read: among === undefined ? read : unlessError(among()) }, options);
      return rules.remember === "all"
        ? remembered
        : (cell) => (typeof cell === "string" ? remembered(cell) : readCell(cell));
    },
    ...(rules.plain ? { plain: rules.plain } : {}),
    ...(rules.words ? { words: rules.words } : {}),
  };
}

const unlessError =
  <T>(read: KindRules<T>["read"]): KindRules<T>["read"] =>
  (cell, options) => {
    if (isCellError(cell)) throw new Refusal(cellError(cell.error));
    return read(cell, options);
  };

/** The usual sentence for a blank in a row that holds a record. */
export const missingIn = (wanted: string): Fault => ({
  what: "it is blank, but the row holds a record",
  mend: `enter ${wanted}`,
});

/** The usual sentence: what was found, what is wanted. */
export const refuse = (cell: Cell, fault: string, wanted: string): Refusal =>
  new Refusal({ what: `${showCell(cell)} ${fault}`, mend: `enter ${wanted}` });

function remembering<T>(
  { isBlank, read }: Required<Pick<KindRules<T>, "isBlank" | "read">>,
  options: ReadOptions,
): (cell: Cell) => T | undefined {
  const known = new Map<Cell, T>();
  return (cell) => {
    // Before anything else: a cell that is known is not blank, and need not be looked at.
    const before = known.get(cell);
    if (before !== undefined) return before;
    if (isBlank(cell)) return undefined;
    const value = read(cell, options);
    known.set(cell, value);
    return value;
  };
}
