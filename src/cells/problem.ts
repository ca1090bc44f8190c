import { type Fault, faultInWords } from "./fault.ts";

/** `#VALUE!` is bad input; `#N/A` is sound input with nothing to report. Only these two carry a message in Excel. */
export type ProblemCode = "#VALUE!" | "#N/A";

export interface ProblemPlace {
  /** The argument as the user sees it in the formula, e.g. `withdrawal_days`. */
  readonly argument?: string | undefined;
  /** 0-based place in the column as the core received it, blank rows already left out. */
  readonly index?: number | undefined;
  /** 1-based row within the range the user gave; set by the evaluator from `index`. */
  readonly row?: number | undefined;
}

/**
 * The one kind of failure: a sentence that says which argument, which row, what was found and how to mend it.
 *
 * @example
 * new Problem("21 is more than the 20 seen", { argument: "lame", row: 3 }).message
 * // → "lame, row 3: 21 is more than the 20 seen"
 */
export class Problem extends Error {
  override readonly name = "Problem";
  readonly code: ProblemCode;
  readonly fault: Fault;
  readonly place: ProblemPlace;

  /** @param fault - in its parts, or as one sentence */
  constructor(fault: Fault | string, place: ProblemPlace = {}, code: ProblemCode = "#VALUE!") {
    const parts = typeof fault === "string" ? { what: fault, mend: "" } : fault;
    super(placeInWords(place) + faultInWords(parts));
    this.code = code;
    this.fault = parts;
    this.place = place;
  }

  /** What is wrong and how to mend it, without the place. */
  get sentence(): string {
    return faultInWords(this.fault);
  }

  /** The same problem at another place: used to turn a place in a compacted column into a row of the sheet. */
  at(place: ProblemPlace): Problem {
    return new Problem(this.fault, place, this.code);
  }
}

/** Sound input with nothing to report: becomes `#N/A`. */
export const nothingToReport = (sentence: string, place: ProblemPlace = {}): Problem =>
  new Problem(sentence, place, "#N/A");

/**
 * The place as it stands before the sentence of a problem.
 *
 * @example
 * placeInWords({ argument: "lame", row: 3 }) // → "lame, row 3: "
 */
export function placeInWords({ argument, row }: ProblemPlace): string {
  if (argument === undefined) return "";
  return row === undefined ? `${argument}: ` : `${argument}, row ${row}: `;
}
