import pow from "@stdlib/math-base-special-pow";
import { normalScore } from "../distributions/normalScore.ts";
import { finiteFlockInterval } from "./finiteFlockInterval.ts";
import type { Interval } from "./interval.ts";
import { proportionInterval } from "./proportionInterval.ts";

export interface TargetQuestion {
  /** Lame sheep, whole number from 0 to `seen`. */
  readonly lame: number;
  /** Sheep seen, whole number from 1. */
  readonly seen: number;
  /** The share that is aimed at, 0 to 1. */
  readonly target: number;
  /** 0 < confidence < 1. */
  readonly confidence: number;
  /** Sheep in the flock, when it is to count. */
  readonly flockSize?: number | undefined;
}

/**
 * Whether a flock is below its target, above it, or whether more sheep must be looked at to tell.
 *
 * Settled means that the whole interval (Wilson's, or the exact one for the flock's size) lies on one side of the
 * target. The number still to look at supposes that the share stays as it was seen; that is why it says "about".
 *
 * @returns a sentence
 * @throws Problem when more sheep were seen than the flock has
 * @example
 * targetCheck({ lame: 1, seen: 200, target: 0.05, confidence: 0.95 }) // → "below target"
 */
export function targetCheck(question: TargetQuestion): string {
  const { lame, seen, target, flockSize } = question;
  const interval = proportionInterval(lame, seen, question);
  const side = sideOf(interval, target);
  if (side !== undefined) return side;
  if (interval.low === interval.high) return "on target";
  return flockSize === undefined ? stillOpen(question) : stillOpenInFlock(question, flockSize);
}

type Side = "below target" | "above target";

function sideOf({ low, high }: Interval, target: number): Side | undefined {
  if (high < target) return "below target";
  if (low > target) return "above target";
  return undefined;
}

const lookAt = (more: number): string => `not settled yet: look at about ${more} more`;

/** More than this many sheep are looked at by nobody: the share seen is then as good as the target. */
const beyondAllCounting = 1e7;

// A target lies outside Wilson's interval when the share is more than z √(target (1 − target) / n) away from it.
function stillOpen({ lame, seen, target, confidence }: TargetQuestion): string {
  const gap = Math.abs(lame / seen - target);
  const needed = Math.floor((pow(normalScore(confidence), 2) * target * (1 - target)) / pow(gap, 2)) + 1;
  return needed <= beyondAllCounting
    ? lookAt(Math.max(needed - seen, 1))
    : "not settled: the share seen is the target itself, and no number of sheep would tell the two apart";
}

function stillOpenInFlock({ lame, seen, target, confidence }: TargetQuestion, flockSize: number): string {
  const wanted: Side = lame / seen < target ? "below target" : "above target";
  const settles = (n: number): boolean => {
    // Rounding never gives fewer lame or fewer sound sheep than were seen already, since n is not below `seen`.
    const x = Math.round((lame / seen) * n);
    return sideOf(finiteFlockInterval(x, n, flockSize, confidence), target) === wanted;
  };
  if (!settles(flockSize)) {
    return `not settled: even all ${flockSize} sheep are not enough if the share stays as it was seen`;
  }
  let open = seen;
  let settled = flockSize;
  while (settled - open > 1) {
    const n = Math.floor((open + settled) / 2);
    if (settles(n)) settled = n;
    else open = n;
  }
  return lookAt(settled - seen);
}
