import { funnelLimit } from "../../core/benchmarks/funnelLimit.ts";
import { binomialDensity } from "../../core/distributions/binomialDensity.ts";

/**
 * The chance that a flock falls outside the funnel, when flocks differ among themselves: their true shares follow a
 * beta distribution around the target, with the intra-flock correlation given.
 *
 * @param tail chance beyond each limit by chance alone: 0.025 for the 95 % limits
 * @example
 * beyondFunnel(100, 0.05, 0, 0.025) // about 0.04: the counts are whole numbers
 */
export function beyondFunnel(n: number, target: number, correlation: number, tail: number): number {
  const [low, high] = [funnelLimit(tail, n, target), funnelLimit(1 - tail, n, target)];
  return chancesOf(n, target, correlation).reduce(
    (sum, chance, lame) => (lame / n < low || lame / n > high ? sum + chance : sum),
    0,
  );
}

/** The beta-binomial chances of 0, 1, … n lame; binomial without correlation. */
function chancesOf(n: number, share: number, correlation: number): readonly number[] {
  if (correlation === 0) return Array.from({ length: n + 1 }, (_, x) => binomialDensity(x, n, share));
  const total = (1 - correlation) / correlation;
  const [a, b] = [share * total, (1 - share) * total];
  let chance = 1;
  for (let j = 0; j < n; j++) chance *= (b + j) / (total + j);
  return Array.from({ length: n + 1 }, (_, x) => {
    const here = chance;
    chance *= ((n - x) * (a + x)) / ((x + 1) * (b + n - x - 1));
    return here;
  });
}
