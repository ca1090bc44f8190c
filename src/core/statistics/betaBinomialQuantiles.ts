import { betaQuantile } from "./betaQuantile.ts";
import { relativeChances } from "./relativeChances.ts";

/** A count of lame sheep whose chance of being lame itself varies from gather to gather (beta distribution). */
export interface SpreadCount {
  /** Sheep seen, whole number from 1. */
  readonly n: number;
  /** Mean share, above 0 and below 1. */
  readonly share: number;
  /** Variance of the count in times of the binomial one: above 1, below n. */
  readonly inflation: number;
}

/**
 * The counts beyond which a beta-binomial distribution holds the chance `tail` on either side: the smallest counts that are
 * not exceeded with a chance of at least `tail`, and of at least 1 − `tail`.
 *
 * Chances relative to that at the mean, by the ratio of neighbours; so no gamma function is needed and nothing underflows.
 * Beyond 100,000 sheep the count is as good as continuous, and the quantiles are those of the share's beta distribution.
 *
 * @param tail 0 < tail < ½
 * @returns shares of n
 * @source Skellam 1948, J R Stat Soc B 10:257
 * @example
 * betaBinomialQuantiles(0.00135, { n: 100, share: 0.05, inflation: 3 }) // → { low: 0, high: 0.22 }
 */
export function betaBinomialQuantiles(tail: number, { n, share, inflation }: SpreadCount) {
  const correlation = (inflation - 1) / (n - 1);
  const total = (1 - correlation) / correlation;
  const [a, b] = [share * total, (1 - share) * total];
  if (n > countedOneByOne) {
    return { low: betaQuantile("lower", tail, a, b), high: betaQuantile("upper", tail, a, b) };
  }
  const chances = relativeChances(n, a, b, Math.round(share * n));
  let all = 0;
  for (let x = 0; x <= n; x++) all += chances[x] ?? 0;
  const first = (p: number): number => {
    let upTo = 0;
    for (let x = 0; x < n; x++) {
      upTo += chances[x] ?? 0;
      if (upTo >= p * all * slack) return x / n;
    }
    return 1;
  };
  return { low: first(tail), high: first(1 - tail) };
}

const countedOneByOne = 100_000;
const slack = 1 - 1e-12;
