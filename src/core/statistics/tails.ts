/** The two tails of a distribution at one point. */
export interface Tails {
  /** Chance of this much or less. */
  readonly lower: number;
  /** Chance of this much or more. */
  readonly upper: number;
  /** How fast the lower tail grows on the scale on which its quantile is sought. */
  readonly slope: number;
}
