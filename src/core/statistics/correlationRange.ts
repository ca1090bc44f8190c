import { betaBinomialFit } from "./betaBinomialFit.ts";
import { betaQuantile } from "./betaQuantile.ts";
import { type FlockCount, flockTallies } from "./flockTallies.ts";
import type { Interval } from "./interval.ts";
import { likeliestShare } from "./likeliestShare.ts";

/**
 * The intra-flock correlations that the counts do not speak against: the profile likelihood of the beta-binomial
 * distribution, cut where it is as unlikely as a t value with one degree of freedom fewer than there are flocks.
 *
 * The t value in place of the normal one widens the range for few flocks; how often it holds the truth is in
 * docs/methods/benchmarking.md.
 *
 * @param flocks two or more of which sheep were seen, not all lame and not all sound
 * @param confidence 0 < confidence < 1
 * @returns from 0 to 1
 * @source Griffiths 1973, Biometrics 29:637 (likelihood)
 * @example
 * correlationRange([{ lame: 1, seen: 10 }, { lame: 1, seen: 10 }], 0.95).low // → 0
 */
export function correlationRange(flocks: readonly FlockCount[], confidence: number): Interval {
  const looked = flocks.filter(({ seen }) => seen > 0);
  const tally = flockTallies(looked);
  const heightAt = (root: number): number =>
    likeliestShare(tally, (root * root) / ((1 - root) * (1 + root))).logLikelihood;
  const { spread } = betaBinomialFit(looked);
  const top = spread === Infinity ? 1 : Math.sqrt(spread / (1 + spread));
  const highest = heightAt(Math.min(top, furthest));
  const t2 = squaredT(looked.length - 1, confidence);
  const held = (root: number): boolean => heightAt(root) >= highest - t2 / 2;
  const low = top === 0 || held(0) ? 0 : edge(held, top, 0);
  const high = top === 1 || held(furthest) ? 1 : edge(held, top, furthest);
  return { low: low * low, high: high * high };
}

const furthest = 1 - 1e-6;

/** The square of the t value beyond which, on either side, lies what is left of `confidence`. */
function squaredT(freedom: number, confidence: number): number {
  const part = betaQuantile("upper", 1 - confidence, 0.5, freedom / 2);
  return (freedom * part) / (1 - part);
}

function edge(held: (root: number) => boolean, inside: number, outside: number): number {
  let [yes, no] = [Math.min(inside, furthest), outside];
  for (let turn = 0; turn < 50; turn++) {
    const middle = (yes + no) / 2;
    if (held(middle)) yes = middle;
    else no = middle;
  }
  return yes;
}
