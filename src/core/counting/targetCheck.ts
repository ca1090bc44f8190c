import pow from "@stdlib/math-base-special-pow";
import { finiteFlockInterval } from "../statistics/finiteFlockInterval.ts";
import type { Interval } from "../statistics/interval.ts";
import { normalScore } from "../statistics/normalScore.ts";
import { proportionInterval } from "../statistics/proportionInterval.ts";
import { countedLooks, type LookChoice, type Looks } from "./countedLooks.ts";
import { effectiveOfOne } from "./effectiveOfOne.ts";
import { effectiveOf } from "./effectiveSeen.ts";
import { gatherSpread } from "./gatherSpread.ts";

export interface TargetChoice extends LookChoice {
  /** The share that is aimed at, 0 to 1. */
  readonly target: number;
}

/**
 * Whether a flock is below its target, above it, or whether more sheep must be looked at to tell.
 *
 * Settled means that the whole interval (Wilson's, or the exact one for the flock's size) lies on one side of the
 * target; for one gather alone also the interval that supposes a spread between gathers, or it is said of these counts
 * only. What is still to be looked at supposes that the share stays as it was seen, and that further gathers differ as
 * those before; that is why it says "about".
 *
 * @param lame lame sheep a row
 * @param seen sheep seen a row
 * @returns a sentence
 * @throws Problem as countedLooks, or when more sheep were seen than the flock has
 * @example
 * targetCheck([1], [200], { target: 0.05, confidence: 0.95, flockSize: 400 }) // → "below target"
 */
export function targetCheck(lame: readonly number[], seen: readonly number[], choice: TargetChoice): string {
  const looks = countedLooks(lame, seen, choice);
  const { target, flockSize } = choice;
  const interval =
    looks.effective === looks.seen
      ? proportionInterval(looks.lame, looks.seen, choice)
      : proportionInterval(looks.share * looks.effective, looks.effective, choice);
  const side = sideOf(interval, target);
  if (side !== undefined) return isOneGather(looks, choice) ? ofOneGather(side, looks, choice) : side;
  if (interval.low === interval.high) return "on target";
  if (flockSize !== undefined) return stillOpenInFlock(looks, choice, flockSize);
  return looks.effective === looks.seen ? stillOpen(looks, choice) : stillOpenOverGathers(looks, choice);
}

const isOneGather = ({ gathers }: Looks, { spread, flockSize }: TargetChoice): boolean =>
  gathers.seen.length === 1 && spread !== "chance" && flockSize === undefined;

/**
 * One gather is one day. Its word stands by itself only where it would stand if gathers differed as is supposed before
 * any is seen (effectiveOfOne); else it is said of these counts alone.
 */
function ofOneGather(side: Side, { share, seen }: Looks, choice: TargetChoice): string {
  const effective = effectiveOfOne(seen, choice.confidence);
  const longRun = sideOf(proportionInterval(share * effective, effective, choice), choice.target);
  return longRun === side ? side : `${side} in these counts only`;
}

type Side = "below target" | "above target";

function sideOf({ low, high }: Interval, target: number): Side | undefined {
  if (high < target) return "below target";
  if (low > target) return "above target";
  return undefined;
}

const lookAt = (more: number): string => `not settled yet: look at about ${more} more`;

/** More than this many sheep, and more than this many gathers, are looked at by nobody. */
const beyondAllCounting = 1e7;
const beyondAllGathers = 1000;

const tooClose = "not settled: the share seen is the target itself, and no number of sheep would tell the two apart";

// A target lies outside Wilson's interval when the share is more than z √(target (1 − target) / n) away from it.
function needed({ share }: Looks, { target, confidence }: TargetChoice): number {
  const gap = Math.abs(share - target);
  return (pow(normalScore(confidence), 2) * target * (1 - target)) / pow(gap, 2);
}

function stillOpen(looks: Looks, choice: TargetChoice): string {
  const sheep = Math.floor(needed(looks, choice)) + 1;
  return sheep <= beyondAllCounting ? lookAt(Math.max(sheep - looks.seen, 1)) : tooClose;
}

function stillOpenOverGathers(looks: Looks, choice: TargetChoice): string {
  const enough = needed(looks, choice);
  if (!(enough <= beyondAllCounting)) return tooClose;
  const { gathers } = looks;
  const { seen, weighty, inflation } = gatherSpread(gathers);
  for (let more = 1; more <= beyondAllGathers; more++) {
    const times = 1 + more / gathers.seen.length;
    const then = { seen: seen * times, weighty: weighty * times, inflation };
    if (effectiveOf(then, choice.confidence) > enough) {
      return `not settled yet: about ${more} more ${more === 1 ? "gather" : "gathers"} like these`;
    }
  }
  return "not settled: the share seen is so near the target that 1000 more gathers like these would not tell the two apart";
}

function stillOpenInFlock({ lame, seen }: Looks, { target, confidence }: TargetChoice, flockSize: number): string {
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
