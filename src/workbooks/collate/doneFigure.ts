/** One figure of what is done about lameness in a flock. */
export interface DoneFigure {
  /** Undefined where it cannot be counted. */
  readonly value: number | undefined;
  readonly low?: number | undefined;
  readonly high?: number | undefined;
  /** Cases that it is of; undefined where it is of none. */
  readonly of: number | undefined;
  /** What it is of; where it cannot be counted, why. */
  readonly words: string;
  /** Cases left out of it, of which a day is missing, cannot be read or cannot be right. */
  readonly leftOut: number;
}

export const notCounted = (words: string, leftOut = 0): DoneFigure => ({
  value: undefined,
  of: undefined,
  words,
  leftOut,
});

export const several = (count: number, what: string): string => `${count} ${count === 1 ? what : `${what}s`}`;
