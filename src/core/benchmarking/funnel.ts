import { Problem } from "../../cells/problem.ts";
import { checkCounts } from "../counting/checkCounts.ts";
import { type NamedCount, tallyByName } from "../counting/tallyByName.ts";
import { betaBinomialCounts, type CountChances } from "../statistics/betaBinomialCounts.ts";
import { betaTails } from "../statistics/betaTails.ts";
import { binomialTails } from "../statistics/binomialTails.ts";
import { mixtureQuantile } from "../statistics/mixtureQuantile.ts";
import { betweenCounts } from "./betweenCounts.ts";
import { flocksDiffer } from "./flocksDiffer.ts";
import { funnelLimit } from "./funnelLimit.ts";
import { shareOfFlocks } from "./shareOfFlocks.ts";

/** The limits for one size of flock. */
interface FunnelLimits {
  readonly low95: number;
  readonly high95: number;
  readonly low998: number;
  readonly high998: number;
}

/** One flock in the funnel; share and limits are undefined where no sheep were seen. */
export interface FunnelFlock extends Partial<Readonly<Record<keyof FunnelLimits, number | undefined>>> {
  readonly flock: string;
  readonly seen: number;
  readonly share: number | undefined;
  readonly word: string;
}

/**
 * Flocks side by side: each with the limits within which a flock of its size falls by chance.
 *
 * The limits are drawn smooth, between two counts. The words are not read from them but from the flock's own exact tail:
 * "above the 95 % limit" where so many lame or more come less often than 25 times in 1000. So never more flocks are
 * called out by chance than the limit says, however few sheep were seen.
 *
 * @param flocks name of the flock a row; rows of one flock are added up
 * @param lame lame sheep a row
 * @param seen sheep seen a row
 * @param target the share expected; left out, that of all flocks together
 * @param differ whether limits and words allow for the spread between the flocks (see flocksDiffer)
 * @returns flocks in order of first appearance
 * @throws Problem when a row has more lame than seen, or one flock is to be compared with itself; #N/A when no sheep were seen
 * @source Spiegelhalter 2005, Stat Med 24:1185
 * @example
 * funnel(["A", "B"], [2, 30], [100, 100], 0.05).map(({ word }) => word)
 * // → ["within the limits", "above the 99.8 % limit"]
 */
export function funnel(
  flocks: readonly string[],
  lame: ArrayLike<number>,
  seen: ArrayLike<number>,
  target?: number,
  differ = false,
): readonly FunnelFlock[] {
  checkCounts(lame, seen);
  const tally = tallyByName({ argument: "flocks", names: flocks }, lame, seen);
  const expected = target ?? shareOfFlocks(tally, "give two flocks or more, or a target");
  const chancesOf = differ ? widened(tally, expected) : byChance(expected);
  const placed = new Map<NamedCount, FunnelFlock>();
  // Size by size: what was worked out for one serves all its flocks, and is let go before the next.
  for (const [n, sameSize] of bySize(tally)) {
    if (n === 0) {
      for (const flock of sameSize)
        placed.set(flock, { flock: flock.name, seen: 0, share: undefined, word: "no sheep seen" });
      continue;
    }
    const { limit, tails } = chancesOf(n);
    const limits = { low95: limit(0.025), high95: limit(0.975), low998: limit(0.001), high998: limit(0.999) };
    for (const flock of sameSize) {
      const { name, lame } = flock;
      placed.set(flock, { flock: name, seen: n, share: lame / n, ...limits, word: wordFor(tails(lame)) });
    }
  }
  return tally.map((flock) => placed.get(flock) as FunnelFlock);
}

function bySize(tally: readonly NamedCount[]): ReadonlyMap<number, readonly NamedCount[]> {
  const sizes = new Map<number, NamedCount[]>();
  for (const flock of tally) {
    const same = sizes.get(flock.seen);
    if (same) same.push(flock);
    else sizes.set(flock.seen, [flock]);
  }
  return sizes;
}

interface Tails {
  readonly lower: number;
  readonly upper: number;
}

/** What chance does to flocks of one size. */
interface SizeChances {
  readonly limit: (p: number) => number;
  readonly tails: (x: number) => Tails;
}

const byChance =
  (expected: number) =>
  (n: number): SizeChances => ({
    limit: (p) => funnelLimit(p, n, expected),
    tails: (x) => binomialTails(x, n, expected),
  });

// Beyond it the chances of every count of a flock no longer fit into memory.
const mostOfAFlock = 1_000_000;

function widened(tally: readonly NamedCount[], expected: number): (n: number) => SizeChances {
  const looked = tally.filter(({ seen }) => seen > 0);
  if (looked.length === 1) {
    throw new Problem("one flock alone does not show how much flocks differ; give two flocks or more", {
      argument: "flocks",
    });
  }
  const large = looked.find(({ seen }) => seen > mostOfAFlock);
  if (large) {
    throw new Problem(
      `${large.seen} sheep of the flock "${large.name}" are more than the ${mostOfAFlock} that a flock may have here; enter the sheep of one flock`,
      { argument: "seen" },
    );
  }
  const correlations = expected > 0 && expected < 1 ? flocksDiffer(looked, expected) : [];
  if (correlations.every((correlation) => correlation === 0)) return byChance(expected);
  return (n) => {
    if (n > countedOneByOne) return ofManySheep(n, expected, correlations);
    const { density, lower, upper } = meanChances(n, expected, correlations);
    return {
      limit(p) {
        const reached = lower.findIndex((chance) => chance >= p * slack);
        const count = reached < 0 ? n : reached;
        return betweenCounts(p, n, { count, upTo: lower[count] ?? 1, density: density[count] ?? 1 });
      },
      tails: (x) => ({ lower: lower[x] ?? 1, upper: upper[x] ?? 1 }),
    };
  };
}

const countedOneByOne = 20_000;

/** Of so many sheep the share is as good as continuous: a beta distribution with the variance of the beta-binomial one. */
function ofManySheep(n: number, share: number, correlations: readonly number[]): SizeChances {
  const parts = correlations.map((correlation) => {
    const all = 1 / (correlation + (1 - correlation) / n) - 1;
    return { a: share * all, b: (1 - share) * all, weight: 1 / correlations.length };
  });
  const tailAt = (tail: "lower" | "upper", lame: number): number =>
    lame <= 0 || lame >= n
      ? 1
      : parts.reduce((sum, { a, b, weight }) => sum + weight * betaTails(lame / n, a, b, 1 - lame / n)[tail], 0);
  return {
    limit: (p) => (p < 0.5 ? mixtureQuantile("lower", p, parts, share) : mixtureQuantile("upper", 1 - p, parts, share)),
    tails: (x) => ({ lower: tailAt("lower", x + 0.5), upper: tailAt("upper", x - 0.5) }),
  };
}

// Stands for none: in a flock of a million it changes no chance by a millionth.
const hardlyAlike = 1e-14;

function meanChances(n: number, share: number, correlations: readonly number[]): CountChances {
  const empty = () => new Float64Array(n + 1);
  const mean = { density: empty(), lower: empty(), upper: empty() };
  for (const correlation of correlations) {
    const chances = betaBinomialCounts(n, share, Math.max(correlation, hardlyAlike));
    for (const name of ["density", "lower", "upper"] as const) {
      const [sums, parts] = [mean[name], chances[name]];
      for (let x = 0; x <= n; x++) sums[x] = (sums[x] as number) + (parts[x] as number) / correlations.length;
    }
  }
  return mean;
}

// Chances within rounding of p count as reaching it.
const slack = 1 - 1e-12;

function wordFor({ lower, upper }: Tails): string {
  if (upper <= 0.001) return "above the 99.8 % limit";
  if (upper <= 0.025) return "above the 95 % limit";
  if (lower <= 0.001) return "below the 99.8 % limit";
  if (lower <= 0.025) return "below the 95 % limit";
  return "within the limits";
}
