import { relativeChances } from "./relativeChances.ts";

/** The chances of 0, 1, … n lame sheep, and of so many or fewer, and so many or more. */
export interface CountChances {
  readonly density: Float64Array;
  readonly lower: Float64Array;
  readonly upper: Float64Array;
}

/**
 * The beta-binomial distribution of the lame sheep among n, when flocks' true shares have the mean and the intra-flock
 * correlation given.
 *
 * Each chance from its neighbour, outwards from the mean, so that no gamma function is needed and what runs out of numbers
 * is as good as 0.
 *
 * @param n sheep seen, whole number from 1
 * @param share mean share, above 0 and below 1
 * @param correlation above 0 and below 1
 * @source Griffiths 1973, Biometrics 29:637
 * @example
 * betaBinomialCounts(1, 0.25, 0.5).density[0] // → 0.75
 */
export function betaBinomialCounts(n: number, share: number, correlation: number): CountChances {
  const size = (1 - correlation) / correlation;
  const density = relativeChances(n, share * size, (1 - share) * size, Math.round(share * n));
  let all = 0;
  for (let x = 0; x <= n; x++) all += density[x] as number;
  for (let x = 0; x <= n; x++) density[x] = (density[x] as number) / all;
  const [lower, upper] = [new Float64Array(n + 1), new Float64Array(n + 1)];
  let [below, above] = [0, 0];
  for (let x = 0; x <= n; x++) {
    below += density[x] as number;
    above += density[n - x] as number;
    lower[x] = below;
    upper[n - x] = above;
  }
  return { density, lower, upper };
}
