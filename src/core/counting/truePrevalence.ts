import { Problem } from "../../cells/problem.ts";
import type { Interval } from "../statistics/interval.ts";
import { normalScore } from "../statistics/normalScore.ts";
import { wilsonInterval } from "../statistics/wilsonInterval.ts";
import { pooledPrevalence } from "./pooledPrevalence.ts";

/** How well the look at a sheep tells lame from sound. */
export interface LookQuality {
  /** Share of the truly lame that are called lame, 0 to 1. */
  readonly sensitivity: number;
  /** Share of the truly sound that are called sound, 0 to 1. */
  readonly specificity: number;
  /** How many truly lame sheep the sensitivity was found on; left out, it is taken as known. */
  readonly sensitivityFrom?: number | undefined;
  /** How many truly sound sheep the specificity was found on; left out, it is taken as known. */
  readonly specificityFrom?: number | undefined;
}

export interface ShareWithLimits extends Interval {
  readonly share: number;
}

/**
 * The share truly lame, when looking misses some lame sheep and calls some sound ones lame.
 *
 * Estimates outside 0 to 1, which happen by chance when few are lame, are set to the end they passed.
 * Sensitivity and specificity known: Wilson's limits of the apparent share are carried over. Found on a number of
 * sheep: the interval of Lang & Reiczigel, which is wider for it.
 *
 * @param lame sheep called lame, a row each
 * @param seen sheep looked at, same length
 * @param look sensitivity and specificity
 * @param confidence 0 < confidence < 1
 * @returns shares
 * @throws Problem when the look tells no more than chance (sensitivity + specificity at most 1)
 * @source Rogan & Gladen 1978, Am J Epidemiol 107:71; Lang & Reiczigel 2014, Prev Vet Med 113:13
 * @example
 * truePrevalence([60], [300], { sensitivity: 0.85, specificity: 0.97 }, 0.95)
 * // → { share: 0.2073170732…, low: 0.1568986085…, high: 0.2669864924… }
 */
export function truePrevalence(
  lame: readonly number[],
  seen: readonly number[],
  look: LookQuality,
  confidence: number,
): ShareWithLimits {
  const { sensitivity, specificity } = look;
  if (sensitivity + specificity <= 1) {
    throw new Problem(
      `${sensitivity} with a specificity of ${specificity} tells no more than tossing a coin; the two must add up to more than 1`,
      { argument: "sensitivity" },
    );
  }
  const apparent = pooledPrevalence(lame, seen);
  const known = look.sensitivityFrom === undefined && look.specificityFrom === undefined;
  const { low, high } = known
    ? carriedOver(wilsonInterval(apparent.lame, apparent.seen, confidence), look)
    : langReiczigel(apparent.lame, apparent.seen, look, confidence);
  return { share: within01(trueShare(apparent.share, look)), low: within01(low), high: within01(high) };
}

// 1 − specificity is taken first: it is exact, and a small share keeps its digits.
const trueShare = (apparent: number, { sensitivity, specificity }: LookQuality): number =>
  (apparent - (1 - specificity)) / (sensitivity - (1 - specificity));

const within01 = (share: number): number => Math.min(Math.max(share, 0), 1);

const carriedOver = ({ low, high }: Interval, look: LookQuality): Interval => ({
  low: trueShare(low, look),
  high: trueShare(high, look),
});

function langReiczigel(x: number, n: number, look: LookQuality, confidence: number): Interval {
  const z = normalScore(confidence);
  const square = z * z;
  const apparent = adjusted(x + square / 2, n + square);
  const sensitivity = testedOn(look.sensitivity, look.sensitivityFrom);
  const specificity = testedOn(look.specificity, look.specificityFrom);
  const gain = sensitivity.share + specificity.share - 1;
  const share = (apparent.share + specificity.share - 1) / gain;
  const shift = 2 * square * (share * sensitivity.variance - (1 - share) * specificity.variance);
  const variance =
    apparent.variance + share * share * sensitivity.variance + (1 - share) * (1 - share) * specificity.variance;
  const reach = (z * Math.sqrt(variance)) / gain;
  return { low: share + shift - reach, high: share + shift + reach };
}

const adjusted = (count: number, all: number) => {
  const share = count / all;
  return { share, variance: (share * (1 - share)) / all };
};

// One sheep of each outcome is added, as the authors do; a share taken as known has no variance.
const testedOn = (share: number, sheep: number | undefined) =>
  sheep === undefined ? { share, variance: 0 } : adjusted(share * sheep + 1, sheep + 2);
