import expm1 from "@stdlib/math-base-special-expm1";
import log1p from "@stdlib/math-base-special-log1p";
import { hypergeometricDensity } from "../statistics/hypergeometricDensity.ts";
import { chanceByMethod, type FindMethod } from "./chanceByMethod.ts";
import { exactDetectChance } from "./exactDetectChance.ts";
import { lameAtLeast } from "./lameAtLeast.ts";
import { refuseBlindLook } from "./refuseBlindLook.ts";
import { wholeUp } from "./wholeUp.ts";

export interface FindPlan {
  /** Sheep in the flock; left out, the flock is taken as endless. */
  readonly flockSize?: number | undefined;
  /** The smallest share lame that is to be found, above 0. */
  readonly designPrevalence: number;
  /** Wanted chance of finding at least one, 0 < confidence < 1. */
  readonly confidence: number;
  /** Share of the lame sheep that a look at them finds, above 0; 1 is a perfect look. */
  readonly sensitivity: number;
  /** "exact" unless said otherwise; no matter for an endless flock, where both say the same. */
  readonly method?: FindMethod | undefined;
}

/** Sheep to look at, or undefined with the chance that the whole flock gives, when that is not enough. */
export type FindAnswer = { readonly sheep: number } | { readonly sheep: undefined; readonly best: number };

// A chance that misses the wanted one by rounding alone reaches it.
const slack = 1e-9;

/**
 * How many sheep to look at to find at least one lame, if the flock has as many as the design prevalence says.
 *
 * Exact: the smallest number for which the chance of finding, as exactDetectChance gives it, is the one wanted.
 * Formula: MacDiarmid's n = (N / Se)(1 − (1 − C)^(1/d)), which is never smaller than the exact number: it takes each
 * lame sheep to be looked at with the chance n / N whatever happens to the others, while in truth one passed over
 * makes the others likelier.
 *
 * @throws Problem when design prevalence or sensitivity is 0
 * @source Cannon & Roe 1982, Livestock Disease Surveys; MacDiarmid 1988, N Z Vet J 36:39
 * @example
 * sampleToFind({ flockSize: 300, designPrevalence: 0.05, confidence: 0.95, sensitivity: 1 }) // → { sheep: 54 }
 */
export function sampleToFind(plan: FindPlan): FindAnswer {
  const { flockSize, designPrevalence, confidence, sensitivity, method = "exact" } = plan;
  refuseBlindLook(sensitivity);
  if (flockSize === undefined) {
    lameAtLeast(1, designPrevalence);
    return { sheep: wholeUp(log1p(-confidence) / log1p(-designPrevalence * sensitivity)) };
  }
  const lame = lameAtLeast(flockSize, designPrevalence);
  const byFormula = wholeUp((flockSize / sensitivity) * -expm1(log1p(-confidence) / lame));
  if (method === "exact" && sensitivity === 1) {
    return { sheep: smallestEnough(flockSize - lame + 1, exceeds(flockSize, lame, confidence)) };
  }
  if (method === "formula" && byFormula <= flockSize) return { sheep: byFormula };
  const look = { flockSize, designPrevalence, sensitivity };
  const best = chanceByMethod[method]({ ...look, lookedAt: flockSize });
  if (method === "formula" || best < confidence - slack) return { sheep: undefined, best };
  const enough = (lookedAt: number): boolean => exactDetectChance({ ...look, lookedAt }) >= confidence - slack;
  return { sheep: smallestEnough(Math.min(byFormula, flockSize), enough) };
}

// One density where the chance of finding with a perfect look needs no more.
const exceeds =
  (N: number, M: number, confidence: number) =>
  (n: number): boolean =>
    1 - hypergeometricDensity(0, { N, M, n }) >= confidence - slack;

/** The chance of finding only grows with every sheep more, so the number is found by halving. */
function smallestEnough(known: number, enough: (n: number) => boolean): number {
  let few = 0;
  let found = known;
  while (found - few > 1) {
    const n = Math.floor((few + found) / 2);
    if (enough(n)) found = n;
    else few = n;
  }
  return found;
}
