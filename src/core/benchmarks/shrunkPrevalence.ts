import { nothingToReport, Problem } from "../../cells/problem.ts";
import { betaQuantile } from "../distributions/betaQuantile.ts";
import { checkCounts } from "../prevalence/checkCounts.ts";
import type { Interval } from "../prevalence/interval.ts";
import { type NamedCount, tallyByName } from "../prevalence/tallyByName.ts";
import { wilsonInterval } from "../prevalence/wilsonInterval.ts";
import { type BetaBinomialFit, betaBinomialFit, type FlockCount } from "./betaBinomialFit.ts";
import { shareOfFlocks } from "./shareOfFlocks.ts";

export interface ShrunkFlock extends Interval {
  readonly flock: string;
  /** As seen; undefined where no sheep were seen. */
  readonly share: number | undefined;
  /** Drawn towards the mean of the flocks, the more the fewer sheep were seen. */
  readonly steadied: number;
  /** 1 is the lowest steadied share; equal shares share a rank. */
  readonly rank: number;
}

/**
 * Each flock's share steadied by what the other flocks show: beta-binomial empirical Bayes.
 *
 * The limits are those of the flock's beta distribution after its own count; they take the spread between flocks as
 * known, and so are somewhat narrow when flocks are few. Where the flocks differ no more than chance makes them, every
 * flock gets the pooled share with Wilson's interval of it.
 *
 * @param flocks name of the flock a row; rows of one flock are added up
 * @param lame lame sheep a row
 * @param seen sheep seen a row
 * @param confidence 0 < confidence < 1
 * @returns flocks in order of first appearance
 * @throws Problem when a row has more lame than seen, for a single flock, or one of more than a million sheep; #N/A when no sheep were seen, or every
 * flock has none or all of its sheep lame
 * @source Griffiths 1973, Biometrics 29:637; Martuzzi & Elliott 1996, Stat Med 15:1867
 * @example
 * shrunkPrevalence(["A", "B"], [1, 1], [10, 10], 0.95).map(({ steadied }) => steadied) // → [0.1, 0.1]
 */
export function shrunkPrevalence(
  flocks: readonly string[],
  lame: readonly number[],
  seen: readonly number[],
  confidence: number,
): readonly ShrunkFlock[] {
  checkCounts(lame, seen);
  const tally = tallyByName({ argument: "flocks", names: flocks }, lame, seen);
  shareOfFlocks(tally, "give two flocks or more");
  refuseMoreThanAFlock(tally);
  const steady = steadier(tally, betaBinomialFit(tally), confidence);
  const steadied = tally.map((flock) => ({
    flock: flock.name,
    share: flock.seen === 0 ? undefined : flock.lame / flock.seen,
    ...steady(flock),
  }));
  const ranks = ranksOf(steadied.map((flock) => flock.steadied));
  return steadied.map((flock, place) => ({ ...flock, rank: ranks[place] ?? 0 }));
}

// The fit takes a step for each sheep of the largest flock.
const mostOfAFlock = 1_000_000;

function refuseMoreThanAFlock(tally: readonly NamedCount[]): void {
  const large = tally.find(({ seen }) => seen > mostOfAFlock);
  if (large)
    throw new Problem(
      `${large.seen} sheep of the flock "${large.name}" are more than the ${mostOfAFlock} that a flock may have here; enter the sheep of one flock`,
      { argument: "seen" },
    );
}

type Steadied = Interval & { readonly steadied: number };

function steadier(
  tally: readonly FlockCount[],
  { share, spread }: BetaBinomialFit,
  confidence: number,
): (flock: FlockCount) => Steadied {
  if (spread === Infinity) {
    throw nothingToReport(
      "every flock has none or all of its sheep lame, which leaves nothing to steady the shares by",
      { argument: "lame" },
    );
  }
  if (spread === 0) {
    const all = tally.reduce((sum, { seen }) => sum + seen, 0);
    const pooled = { steadied: share, ...wilsonInterval(share * all, all, confidence) };
    return () => pooled;
  }
  const tail = (1 - confidence) / 2;
  return ({ lame, seen }) => {
    const a = share / spread + lame;
    const b = (1 - share) / spread + seen - lame;
    return { steadied: a / (a + b), low: betaQuantile("lower", tail, a, b), high: betaQuantile("upper", tail, a, b) };
  };
}

function ranksOf(values: readonly number[]): readonly number[] {
  const rankOf = new Map<number, number>();
  [...values]
    .sort((one, other) => one - other)
    .forEach((value, place) => {
      if (!rankOf.has(value)) rankOf.set(value, place + 1);
    });
  return values.map((value) => rankOf.get(value) ?? 0);
}
