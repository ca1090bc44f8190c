import { Problem } from "../../cells/problem.ts";
import { checkCounts } from "../counting/checkCounts.ts";
import { type NamedCount, tallyByName } from "../counting/tallyByName.ts";
import { betaQuantile } from "../statistics/betaQuantile.ts";
import type { FlockCount } from "../statistics/flockTallies.ts";
import type { Interval } from "../statistics/interval.ts";
import { mixtureQuantile } from "../statistics/mixtureQuantile.ts";
import { type PossibleMeans, type PossibleSpread, spreadPosterior } from "../statistics/spreadPosterior.ts";
import { flockRanks, type ShareBelief } from "./flockRanks.ts";
import { shareOfFlocks } from "./shareOfFlocks.ts";

export interface ShrunkFlock extends Interval {
  readonly flock: string;
  /** As seen; undefined where no sheep were seen. */
  readonly share: number | undefined;
  /** Drawn towards the mean of the flocks, the more the fewer sheep were seen. */
  readonly steadied: number;
  /** 1 is the lowest steadied share; equal shares share a rank. */
  readonly rank: number;
  /** The ranks that the true share may have. */
  readonly lowRank: number;
  readonly highRank: number;
  readonly word: RankWord;
}

type RankWord = "better half" | "worse half" | "middle" | "not told apart";

/**
 * Each flock's share steadied by what the other flocks show.
 *
 * The flocks' true shares are taken to follow one beta distribution, of which neither mean nor spread is known: the
 * answer is averaged over all that the counts leave possible (see spreadPosterior), so that the ranges hold for few
 * flocks too, and where no spread shows. Each flock's share then follows a mixture of beta distributions, one for each
 * possible spread. With hundreds of flocks, of which the spread is known well, one beta distribution of the same mean
 * and variance stands for the mixture.
 *
 * @param flocks name of the flock a row; rows of one flock are added up
 * @param lame lame sheep a row
 * @param seen sheep seen a row
 * @param confidence 0 < confidence < 1
 * @returns flocks in order of first appearance
 * @throws Problem when a row has more lame than seen, for a single flock, or one of more than a million sheep; #N/A when no sheep were seen
 * @source Gelman, Carlin, Stern & Rubin, Bayesian Data Analysis, 5.3; Martuzzi & Elliott 1996, Stat Med 15:1867
 * @example
 * shrunkPrevalence(["A", "B"], [1, 1], [10, 10], 0.95).map(({ steadied }) => steadied.toFixed(3)) // → ["0.136", "0.136"]
 */
export function shrunkPrevalence(
  flocks: readonly string[],
  lame: ArrayLike<number>,
  seen: ArrayLike<number>,
  confidence: number,
): readonly ShrunkFlock[] {
  checkCounts(lame, seen);
  const tally = tallyByName({ argument: "flocks", names: flocks }, lame, seen);
  shareOfFlocks(tally, "give two flocks or more");
  refuseMoreThanAFlock(tally);
  const steady = steadier(tally, confidence);
  const steadied = tally.map(steady);
  const ranks = ranksOf(steadied.map((flock) => flock.steadied));
  const ranges = flockRanks(
    steadied.map(({ belief }) => belief),
    confidence,
  );
  return steadied.map(({ belief: _, ...range }, index) => {
    const { name, lame: x, seen: n } = tally[index] as NamedCount;
    const rank = ranks[index] ?? 0;
    const { low = rank, high = rank } = ranges[index] ?? {};
    const [lowRank, highRank] = [Math.min(low, rank), Math.max(high, rank)];
    const word = rankWord(lowRank, highRank, tally.length);
    return { flock: name, share: n === 0 ? undefined : x / n, ...range, rank, lowRank, highRank, word };
  });
}

function rankWord(low: number, high: number, flocks: number): RankWord {
  if (2 * high <= flocks) return "better half";
  if (2 * (low - 1) >= flocks) return "worse half";
  return 2 * (high - low + 1) > flocks ? "not told apart" : "middle";
}

// Beyond any flock, and beyond what the distributions were measured for.
const mostOfAFlock = 1_000_000;

function refuseMoreThanAFlock(tally: readonly NamedCount[]): void {
  const large = tally.find(({ seen }) => seen > mostOfAFlock);
  if (large)
    throw new Problem(
      `${large.seen} sheep of the flock "${large.name}" are more than the ${mostOfAFlock} that a flock may have here; enter the sheep of one flock`,
      { argument: "seen" },
    );
}

interface Steadied extends Interval {
  readonly steadied: number;
  /** The beta distribution with the mean and variance of what is known of the share. */
  readonly belief: ShareBelief;
}

// A mixture's quantile takes about a microsecond for each of its parts, a beta distribution's about ten in all.
const mostParts = 200_000;

function steadier(tally: readonly FlockCount[], confidence: number): (flock: FlockCount) => Steadied {
  const groups = spreadPosterior(tally);
  const all = groups.flatMap(({ means }) => means);
  const tail = (1 - confidence) / 2;
  const byMixture = all.length * new Set(tally.map(keyOf)).size <= mostParts;
  const known = new Map<string, Steadied>();
  return (flock) => {
    const found = known.get(keyOf(flock));
    if (found) return found;
    const { mean, belief } = afterCount(all, flock);
    let low = betaQuantile("lower", tail, belief.a, belief.b);
    let high = betaQuantile("upper", tail, belief.a, belief.b);
    if (byMixture) {
      const parts = groups.flatMap((group) => partsAfterCount(group, flock));
      low = mixtureQuantile("lower", tail, parts, low);
      high = mixtureQuantile("upper", tail, parts, high);
    }
    const steadied = { steadied: mean, low: low < leastShare ? 0 : low, high, belief };
    known.set(keyOf(flock), steadied);
    return steadied;
  };
}

// A limit so low is lower than one sheep in any number that there are; 0 is the wider range.
const leastShare = 1e-9;

const keyOf = ({ lame, seen }: FlockCount): string => `${lame} ${seen}`;

/** What a flock's share follows after its own count, for one spread: a beta distribution for each mean, or one for all. */
function partsAfterCount({ means, lumpy }: PossibleMeans, flock: FlockCount): readonly PossibleSpread[] {
  if (lumpy) {
    const { belief, weight } = afterCount(means, flock);
    return [{ ...belief, weight }];
  }
  const { lame, seen } = flock;
  return means.map(({ a, b, weight }) => ({ a: a + lame, b: b + seen - lame, weight }));
}

/** Mean of the mixture of beta distributions after the flock's own count, and the beta distribution that is nearest. */
function afterCount(possible: readonly PossibleSpread[], { lame, seen }: FlockCount) {
  let [weight, mean, square] = [0, 0, 0];
  for (const one of possible) {
    const all = one.a + one.b + seen;
    const share = (one.a + lame) / all;
    weight += one.weight;
    mean += one.weight * share;
    square += (one.weight * share * (one.a + lame + 1)) / (all + 1);
  }
  [mean, square] = [mean / weight, square / weight];
  const size = (mean - square) / (square - mean * mean);
  return { weight, mean, belief: { a: mean * size, b: (1 - mean) * size } };
}

function ranksOf(values: readonly number[]): readonly number[] {
  const rankOf = new Map<number, number>();
  [...values]
    .sort((one, other) => one - other)
    .forEach((value, index) => {
      if (!rankOf.has(value)) rankOf.set(value, index + 1);
    });
  return values.map((value) => rankOf.get(value) ?? 0);
}
