import { type Fault, faultInWords } from "./fault.ts";
import { placeInWords } from "./problem.ts";

/**
 * Stands where a record's cell cannot be read: something is there, or belongs there, and nobody knows what. It is no value
 * and no blank, so that no computation can take it for sound, clear, zero or none.
 */
export class Doubt {
  /** The argument as the user sees it in the formula. */
  readonly argument: string;
  readonly fault: Fault;

  constructor(argument: string, fault: Fault) {
    this.argument = argument;
    this.fault = fault;
  }

  /** What is wrong, without the place: for an answer that stands beside its own row. */
  get sentence(): string {
    return faultInWords(this.fault);
  }

  /**
   * @param row - 1-based row within the range the user gave
   * @example
   * new Doubt("treated", { what: '"12/3" is not a date', mend: "enter a real date" }).inRow(3)
   * // → 'treated, row 3: "12/3" is not a date; enter a real date'
   */
  inRow(row: number): string {
    return placeInWords({ argument: this.argument, row }) + this.sentence;
  }
}
