import exp from "@stdlib/math-base-special-exp";
import ln from "@stdlib/math-base-special-ln";
import { type FlockCount, type FlockTallies, flockTallies, type Run } from "./flockTallies.ts";
import { likeliestShare } from "./likeliestShare.ts";
import { sumOf } from "./sumOf.ts";

/** How the shares of flocks are spread: a beta distribution with parameters share / spread and (1 − share) / spread. */
export interface BetaBinomialFit {
  /** Mean share of the flocks, 0 to 1. */
  readonly share: number;
  /** 1 / (a + b); 0 when the flocks differ no more than chance makes them; Infinity when each has none or all lame. */
  readonly spread: number;
}

/**
 * The beta-binomial distribution of greatest likelihood.
 *
 * Works with mean share and spread, in which the likelihood has no cancellation even where the spread is 0:
 * Σ ln(share + j spread) + Σ ln(1 − share + j spread) − Σ ln(1 + j spread). For any spread one share is the likeliest
 * (see likeliestShare), but over the spread there can be a top at 0 and another further out. So the likeliest share is
 * found for many spreads, and Newton's steps climb from the best of them.
 *
 * @param flocks counts; at least one sheep seen in all
 * @returns mean share and spread, relative accuracy about 1e-10
 * @source Griffiths 1973, Biometrics 29:637
 * @example
 * betaBinomialFit([{ lame: 1, seen: 10 }, { lame: 1, seen: 10 }]) // → { share: 0.1, spread: 0 }
 */
export function betaBinomialFit(flocks: readonly FlockCount[]): BetaBinomialFit {
  const share = sumOf(flocks.map((flock) => flock.lame)) / sumOf(flocks.map(({ seen }) => seen));
  const without = { share, spread: 0 };
  if (share === 0 || share === 1 || flocks.every(({ seen }) => seen <= 1)) return without;
  const looked = flocks.filter(({ seen }) => seen > 0);
  if (looked.every((flock) => flock.lame === 0 || flock.lame === flock.seen)) {
    return { share: looked.filter(({ lame }) => lame > 0).length / looked.length, spread: Infinity };
  }
  const tally = flockTallies(looked);
  const tried = spreads.map((spread) => ({ spread, ...likeliestShare(tally, spread) }));
  const best = tried.reduce((one, other) => (other.logLikelihood > one.logLikelihood ? other : one));
  // What a spread gains beyond rounding; without a gain the top is at 0, where no step by its logarithm would end.
  const gain = best.logLikelihood - likeliestShare(tally, 0).logLikelihood;
  return gain > 1e-9 && best !== tried[0] ? climb(tally, best) : without;
}

/** From so little that a flock of a million shows none of it to so much that every flock has none or all lame. */
const spreads: readonly number[] = Array.from({ length: 70 }, (_, step) => exp(-21 + step / 2));

/** Sums over j of tally × ln(base + j spread) and of its first and second derivatives. */
interface LogSums {
  readonly value: number;
  /** By the base. */
  readonly base: number;
  /** By the spread. */
  readonly spread: number;
  readonly baseBase: number;
  readonly baseSpread: number;
  readonly spreadSpread: number;
}

function logSums(runs: readonly Run[], base: number, spread: number): LogSums {
  let [value, first, firstJ, second, secondJ, secondJJ] = [0, 0, 0, 0, 0, 0];
  for (const { from, to, flocks } of runs) {
    for (let j = from; j < to; j++) {
      const inverse = 1 / (base + j * spread);
      const once = flocks * inverse;
      const twice = once * inverse;
      value -= flocks * ln(inverse);
      first += once;
      firstJ += j * once;
      second += twice;
      secondJ += j * twice;
      secondJJ += j * j * twice;
    }
  }
  return { value, base: first, spread: firstJ, baseBase: -second, baseSpread: -secondJ, spreadSpread: -secondJJ };
}

/** The logarithm of the likelihood with its derivatives by logit(share) and ln(spread), both free to take any value. */
function likelihood(tally: FlockTallies, { share, spread }: BetaBinomialFit) {
  const lame = logSums(tally.lame, share, spread);
  const sound = logSums(tally.sound, 1 - share, spread);
  const seen = logSums(tally.seen, 1, spread);
  const width = share * (1 - share);
  const byShare = lame.base - sound.base;
  const bySpread = lame.spread + sound.spread - seen.spread;
  return {
    value: lame.value + sound.value - seen.value,
    slope: [byShare * width, bySpread * spread] as const,
    curve: [
      (lame.baseBase + sound.baseBase) * width * width + byShare * width * (1 - 2 * share),
      (lame.baseSpread - sound.baseSpread) * width * spread,
      (lame.spreadSpread + sound.spreadSpread - seen.spreadSpread) * spread * spread + bySpread * spread,
    ] as const,
  };
}

const longestStep = 2;

function climb(tally: FlockTallies, start: BetaBinomialFit): BetaBinomialFit {
  let fit: BetaBinomialFit = { share: start.share, spread: start.spread };
  let here = likelihood(tally, fit);
  let before = Infinity;
  for (let turn = 0; turn < 200; turn++) {
    const step = newtonStep(here);
    const size = Math.max(Math.abs(step[0]), Math.abs(step[1]));
    // Steps that no longer shrink are rounding.
    if (size < 1e-14 || (size < 1e-8 && size >= before)) return fit;
    before = size;
    let part = Math.min(1, longestStep / size);
    let next = moved(fit, step, part);
    let there = likelihood(tally, next);
    // A Newton step from afar may overshoot the top; close to it the values no longer tell, and the step is right.
    while (size > 1e-4 && there.value < here.value) {
      part /= 2;
      next = moved(fit, step, part);
      there = likelihood(tally, next);
    }
    [fit, here] = [next, there];
  }
  throw new RangeError("the beta-binomial likelihood found no top");
}

function newtonStep({ slope: [s, t], curve: [ss, st, tt] }: ReturnType<typeof likelihood>): readonly [number, number] {
  const determinant = ss * tt - st * st;
  // Where the surface is not a hill, walk up along each axis.
  if (!(ss < 0 && determinant > 0)) return [s / Math.abs(ss || 1), t / Math.abs(tt || 1)];
  return [(st * t - tt * s) / determinant, (st * s - ss * t) / determinant];
}

function moved({ share, spread }: BetaBinomialFit, [s, t]: readonly [number, number], part: number): BetaBinomialFit {
  const odds = (share / (1 - share)) * exp(part * s);
  return { share: odds / (1 + odds), spread: spread * exp(part * t) };
}
