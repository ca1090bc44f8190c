import exp from "@stdlib/math-base-special-exp";
import ln from "@stdlib/math-base-special-ln";
import log1p from "@stdlib/math-base-special-log1p";

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
 * Each chance from its neighbour, outwards from the likeliest count, so that nothing runs out of numbers.
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
  const [a, b] = [share * size, (1 - share) * size];
  const logs = new Float64Array(n + 1);
  let top = 0;
  for (let x = 0; x < n; x++) {
    logs[x + 1] = (logs[x] ?? 0) + stepUp(x, n, a, b);
    if ((logs[x + 1] ?? 0) > top) top = logs[x + 1] ?? 0;
  }
  const density = logs.map((log) => exp(log - top));
  const all = density.reduce((sum, chance) => sum + chance, 0);
  for (let x = 0; x <= n; x++) density[x] = (density[x] ?? 0) / all;
  const [lower, upper] = [new Float64Array(n + 1), new Float64Array(n + 1)];
  let [below, above] = [0, 0];
  for (let x = 0; x <= n; x++) {
    below += density[x] ?? 0;
    above += density[n - x] ?? 0;
    lower[x] = below;
    upper[n - x] = above;
  }
  return { density, lower, upper };
}

/** The logarithm of how many times likelier x + 1 lame are than x. */
function stepUp(x: number, n: number, a: number, b: number): number {
  const [up, down] = [(n - x) * (a + x), (x + 1) * (b + n - x - 1)];
  return Math.abs(up - down) < down / 2 ? log1p((up - down) / down) : ln(up / down);
}
