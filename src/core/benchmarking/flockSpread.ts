import pow from "@stdlib/math-base-special-pow";
import { nothingToReport, Problem } from "../../cells/problem.ts";
import { pooledPrevalence } from "../counting/pooledPrevalence.ts";
import { correlationRange } from "../statistics/correlationRange.ts";

export interface FlockSpread {
  /** Share of all sheep seen. */
  readonly share: number;
  /** Intra-flock correlation: 0 when flocks differ by chance only; chance can take it a little below 0. */
  readonly correlation: number;
  /** How many times wider the variance of the pooled share is than if all sheep came from one flock; at least 1. */
  readonly designEffect: number;
  /** Range of the correlation, 0 to 1. */
  readonly low: number;
  readonly high: number;
  /** Range of the design effect. */
  readonly lowEffect: number;
  readonly highEffect: number;
}

/**
 * How much flocks differ beyond chance: the analysis-of-variance estimate of the intra-flock correlation.
 *
 * The design effect is 1 + (Σ n² / Σ n − 1) × correlation, which holds for the pooled share of flocks of unequal size;
 * the mean size in its place would make it too small. A correlation that chance took below 0 gives a design effect of
 * 1: sheep of a flock are never less alike than sheep of several. The range is that of correlationRange; where the
 * estimate, which comes from another method, lies outside it, the range reaches to the estimate.
 *
 * @param lame lame sheep, a flock a row
 * @param seen sheep seen, a flock a row; flocks of which none were seen say nothing and do not count
 * @param confidence of the range, 0 < confidence < 1
 * @throws Problem for a single flock; #N/A when no flock has two sheep, or none or all are lame
 * @source Donner & Koval 1980, Biometrics 36:19; Ridout, Demétrio & Firth 1999, Biometrics 55:137
 * @example
 * flockSpread([1, 8], [10, 10], 0.95).correlation // → 0.6246246246…
 */
export function flockSpread(lame: ArrayLike<number>, seen: ArrayLike<number>, confidence: number): FlockSpread {
  const { share, seen: all } = pooledPrevalence(lame, seen);
  let [flocks, squares, between, within] = [0, 0, 0, 0];
  for (let row = 0; row < seen.length; row++) {
    const n = seen[row] as number;
    if (n === 0) continue;
    const own = (lame[row] ?? 0) / n;
    flocks++;
    squares += n * n;
    between += n * pow(own - share, 2);
    within += n * own * (1 - own);
  }
  if (flocks === 1)
    throw new Problem("one flock alone has no spread between flocks; give two or more", { argument: "lame" });
  if (flocks === all)
    throw nothingToReport("one sheep a flock tells nothing of how alike sheep of a flock are", { argument: "seen" });
  if (share === 0 || share === 1)
    throw nothingToReport(`${share === 0 ? "no" : "every"} sheep was lame, so there is no spread`, {
      argument: "lame",
    });
  const size = (all - squares / all) / (flocks - 1);
  const meanBetween = between / (flocks - 1);
  const meanWithin = within / (all - flocks);
  const correlation = (meanBetween - meanWithin) / (meanBetween + (size - 1) * meanWithin);
  const effect = (likeness: number): number => 1 + (squares / all - 1) * likeness;
  const known = Math.max(correlation, 0);
  const range = correlationRange(
    Array.from(seen, (n, row) => ({ lame: lame[row] ?? 0, seen: n })),
    confidence,
  );
  const [low, high] = [Math.min(range.low, known), Math.max(range.high, known)];
  return {
    share,
    correlation,
    designEffect: effect(known),
    low,
    high,
    lowEffect: effect(low),
    highEffect: effect(high),
  };
}
