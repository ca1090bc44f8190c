/** What is wrong and how to mend it, in words. */
export interface Fault {
  readonly what: string;
  /** Empty where what is wrong says it all. */
  readonly mend: string;
}

/**
 * @example
 * faultInWords({ what: '"12/3" is not a date', mend: "enter a real date" }) // → '"12/3" is not a date; enter a real date'
 */
export const faultInWords = ({ what, mend }: Fault): string => (mend === "" ? what : `${what}; ${mend}`);
