import exp from "@stdlib/math-base-special-exp";
import ln from "@stdlib/math-base-special-ln";
import { type FlockCount, type FlockTallies, flockTallies } from "./flockTallies.ts";
import { gaussLegendre } from "./gaussLegendre.ts";
import { likeliestShare, likelihoodAt } from "./likeliestShare.ts";
import { risingSums } from "./risingSums.ts";

/** One distribution that the flocks' true shares may follow, a beta distribution, and how probable it is. */
export interface PossibleSpread {
  readonly a: number;
  readonly b: number;
  /** Sums to 1 over all of them. */
  readonly weight: number;
}

/** The distributions of one spread, with means side by side. */
export interface PossibleMeans {
  readonly means: readonly PossibleSpread[];
  /** So little spread that the steps between the means show: to be taken together, not one by one. */
  readonly lumpy: boolean;
}

/**
 * The beta distributions that the true shares of flocks may follow, each with its probability, given the counts.
 *
 * Beforehand every mean share from 0 to 1 is taken as equally probable, and so is every value from 0 to 1 of the root
 * of the intra-flock correlation: how far flocks lie from their mean, as a part of the furthest there is. Quadrature:
 * Gauss–Legendre over the root, and for each value of it equal steps over the logit of the mean, both over all that
 * the counts leave possible to 1 in ten million.
 *
 * @param flocks counts, of which those without a look do not matter
 * @source Gelman, Carlin, Stern & Rubin, Bayesian Data Analysis, 5.3 (the model of several binomial shares)
 * @example
 * spreadPosterior([{ lame: 2, seen: 9 }]).flatMap(({ means }) => means).reduce((sum, { weight }) => sum + weight, 0).toFixed(9)
 * // → "1.000000000"
 */
export function spreadPosterior(flocks: readonly FlockCount[]): readonly PossibleMeans[] {
  const tally = flockTallies(flocks.filter(({ seen }) => seen > 0));
  const tried = rootsTried(tally).map(({ at, weight }) => {
    const spread = spreadOf(at);
    const { lumpy, found, step } = sharesTried(tally, spread);
    const nodes = found.map(({ logit, logDensity }) => ({
      a: 1 / (1 + exp(-logit)) / spread,
      b: 1 / (1 + exp(logit)) / spread,
      logWeight: logDensity + ln(weight * step),
    }));
    return { lumpy, nodes };
  });
  const all = tried.flatMap(({ nodes }) => nodes.map(({ logWeight }) => logWeight));
  const most = all.reduce((greatest, logWeight) => Math.max(greatest, logWeight), -Infinity);
  const sum = all
    .filter((logWeight) => logWeight > most - negligible)
    .reduce((total, logWeight) => total + exp(logWeight - most), 0);
  return tried
    .map(({ lumpy, nodes }) => ({
      lumpy,
      means: nodes
        .filter(({ logWeight }) => logWeight > most - negligible)
        .map(({ a, b, logWeight }) => ({ a, b, weight: exp(logWeight - most) / sum })),
    }))
    .filter(({ means }) => means.length > 0);
}

/** A density that lies this far below the greatest, on the logarithm, no longer counts. */
const negligible = 18;

/** 1 / (a + b) for the root of the intra-flock correlation 1 / (a + b + 1). */
const spreadOf = (root: number): number => (root * root) / ((1 - root) * (1 + root));

/** One more lame and one more sound: a flat prior of the share, seen on the scale of its logit. */
const flat = [1, 1] as const;

// By Laplace's rule, good enough to find where the density counts at all.
function roughLogDensity(tally: FlockTallies, root: number): number {
  const { logLikelihood, curve } = likeliestShare(tally, spreadOf(root), flat);
  return logLikelihood - ln(-curve) / 2;
}

const scanned = 24;
const nodesOfRoot = 28;

/** Values of the root with their weights, over all that is possible. */
function rootsTried(tally: FlockTallies): readonly { readonly at: number; readonly weight: number }[] {
  const density = (root: number): number => roughLogDensity(tally, root);
  const scan = Array.from({ length: scanned + 1 }, (_, step) => Math.min(step / scanned, furthest));
  const densities = scan.map(density);
  const best = densities.indexOf(Math.max(...densities));
  const [top, height] = climbTo(density, scan[Math.max(best - 1, 0)] ?? 0, scan[Math.min(best + 1, scanned)] ?? 1);
  const counts = (index: number): boolean => (densities[index] ?? -Infinity) > height - negligible;
  const first = scan.findIndex((_, index) => counts(index));
  const last = scan.map((_, index) => counts(index)).lastIndexOf(true);
  const holds = (root: number): boolean => density(root) > height - negligible;
  // Where no value scanned counts, all that does lies about the top between two of them.
  const low = counts(0)
    ? 0
    : edge(holds, first < 0 ? top : (scan[first] ?? 0), scan[(first < 0 ? best : first) - 1] ?? 0);
  const high = counts(scanned)
    ? 1
    : edge(holds, last < 0 ? top : (scan[last] ?? 1), scan[(last < 0 ? best : last) + 1] ?? 1);
  return gaussLegendre(nodesOfRoot).map(([x, weight]) => ({
    at: (low + high + (high - low) * x) / 2,
    weight: ((high - low) * weight) / 2,
  }));
}

const furthest = 1 - 1e-6;

/** The top of a function with one top between two places, by the golden section. */
function climbTo(height: (x: number) => number, from: number, to: number): readonly [x: number, height: number] {
  const ratio = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [from, to];
  let [one, other] = [high - ratio * (high - low), low + ratio * (high - low)];
  let [ofOne, ofOther] = [height(one), height(other)];
  for (let turn = 0; turn < 12; turn++) {
    if (ofOne > ofOther) {
      [high, other, ofOther] = [other, one, ofOne];
      one = high - ratio * (high - low);
      ofOne = height(one);
    } else {
      [low, one, ofOne] = [one, other, ofOther];
      other = low + ratio * (high - low);
      ofOther = height(other);
    }
  }
  return ofOne > ofOther ? [one, ofOne] : [other, ofOther];
}

/** Where `holds` ends between a place at which it holds and one at which it does not. */
function edge(holds: (x: number) => boolean, inside: number, outside: number): number {
  let [yes, no] = [inside, outside];
  for (let turn = 0; turn < 8; turn++) {
    const middle = (yes + no) / 2;
    if (holds(middle)) yes = middle;
    else no = middle;
  }
  return no;
}

/** Equal steps over the logit of the mean share, from the likeliest outwards while they count. */
function sharesTried(tally: FlockTallies, spread: number) {
  const { share, curve } = likeliestShare(tally, spread, flat);
  const top = ln(share) - ln(1 - share);
  const deviation = 1 / Math.sqrt(-curve);
  // How wide the flocks' shares lie about one mean: steps that are wider would show as stairs.
  const width = Math.sqrt(spread / (share * (1 - share)));
  const lumpy = width < deviation / finest;
  const step = lumpy ? widestStep * deviation : Math.min(widestStep * deviation, width);
  const ofAll = risingSums(tally.seen, 1, spread).logs;
  const at = (index: number) => {
    const logit = top + index * step;
    return { logit, logDensity: likelihoodAt(tally, logit, spread, flat, ofAll).logLikelihood };
  };
  const found = [at(0)];
  const least = (found[0]?.logDensity ?? 0) - negligible;
  for (const direction of [-1, 1])
    for (let index = direction; Math.abs(index) < 1000; index += direction) {
      const node = at(index);
      if (node.logDensity < least) break;
      found.push(node);
    }
  return { lumpy, step, found };
}

/** Steps in standard deviations of the mean, with which the sum over a bell is exact to 1 in 100,000 or better. */
const widestStep = 0.7;
const finest = 8;
