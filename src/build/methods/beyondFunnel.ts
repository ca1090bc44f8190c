import { binomialDensity } from "../../core/statistics/binomialDensity.ts";
import { binomialTails } from "../../core/statistics/binomialTails.ts";

/**
 * The chance that FUNNEL calls a flock outside the limits, when flocks differ among themselves: their true shares follow a
 * beta distribution around the target, with the intra-flock correlation given.
 *
 * @param tail chance beyond each limit by chance alone: 0.025 for the 95 % limits
 * @example
 * beyondFunnel(100, 0.05, 0, 0.025) // about 0.04: the counts are whole numbers
 */
export function beyondFunnel(n: number, target: number, correlation: number, tail: number): number {
  return chancesOf(n, target, correlation).reduce((sum, chance, lame) => {
    const { lower, upper } = binomialTails(lame, n, target);
    return lower <= tail || upper <= tail ? sum + chance : sum;
  }, 0);
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
