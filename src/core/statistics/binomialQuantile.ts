import { binomialDensity } from "./binomialDensity.ts";
import { binomialTails } from "./binomialTails.ts";
import { roughNormalScore } from "./roughNormalScore.ts";

/** A count of the binomial distribution and what lies up to it. */
export interface BinomialQuantile {
  /** The smallest count up to which the chance is at least `p`. */
  readonly count: number;
  /** The chance of this count or fewer. */
  readonly upTo: number;
  /** The chance of exactly this count. */
  readonly density: number;
}

// Chances within rounding of p count as reaching it.
const slack = 1 - 1e-12;

/**
 * The binomial quantile: smallest count that is not exceeded with a chance of at least `p`.
 *
 * Steps from a normal guess with a skewness term, nearly always within a count or two.
 * `@stdlib/stats-base-dists-binomial-quantile` works out a whole distribution function at each step.
 *
 * @param p 0 < p < 1
 * @param n whole number from 0
 * @param share 0 to 1
 * @example
 * binomialQuantile(0.5, 10, 0.5).count // → 5
 */
export function binomialQuantile(p: number, n: number, share: number): BinomialQuantile {
  const spread = Math.sqrt(n * share * (1 - share));
  if (spread === 0) return { count: n * share, upTo: 1, density: 1 };
  const score = -roughNormalScore(p);
  const guess = n * share + spread * score + ((1 - 2 * share) * (score * score - 1)) / 6;
  let count = Math.min(Math.max(Math.floor(guess), 0), n);
  let density = binomialDensity(count, n, share);
  const odds = share / (1 - share);
  let { lower: upTo } = binomialTails(count, n, share);
  while (upTo < p * slack && count < n) {
    density *= ((n - count) / (count + 1)) * odds;
    count++;
    upTo += density;
  }
  while (count > 0 && upTo - density >= p * slack) {
    upTo -= density;
    density *= count / ((n - count + 1) * odds);
    count--;
  }
  return { count, upTo, density };
}
