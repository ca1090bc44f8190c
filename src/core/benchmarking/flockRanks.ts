import exp from "@stdlib/math-base-special-exp";
import ln from "@stdlib/math-base-special-ln";
import { betaTails } from "../statistics/betaTails.ts";
import type { Interval } from "../statistics/interval.ts";
import { normalScore } from "../statistics/normalScore.ts";

/** What is known of a flock's true share: a beta distribution. */
export interface ShareBelief {
  readonly a: number;
  readonly b: number;
}

/**
 * The ranks that each flock's true share may have among them all; rank 1 is the lowest share.
 *
 * The rank is 1 and the number of other flocks whose share lies lower. For up to 200 flocks its distribution is summed
 * exactly over a grid of shares (each other flock lower or not: the Poisson–binomial distribution). For more, the
 * flock's own limits are turned into expected ranks, and the chance in the others is added to them as variances are.
 *
 * @param beliefs of each flock's true share, taken as independent
 * @param confidence 0 < confidence < 1
 * @returns lowest and highest rank of each flock, equal tails
 * @source Goldstein & Spiegelhalter 1996, J R Stat Soc A 159:385 (ranks need their range); Zou & Donner 2008 (adding limits)
 * @example
 * flockRanks([{ a: 1, b: 99 }, { a: 50, b: 50 }], 0.95) // → [{ low: 1, high: 1 }, { low: 2, high: 2 }]
 */
export function flockRanks(beliefs: readonly ShareBelief[], confidence: number): readonly Interval[] {
  const few = beliefs.length <= mostExact;
  const grid = gridFor(beliefs, few ? fineGrid : coarseGrid);
  const lower = lowerAt(beliefs, grid, few ? exactly : betweenExact);
  return few ? exactRanks(lower, confidence) : roughRanks(beliefs.length, lower, confidence);
}

const mostExact = 200;
const fineGrid = 400;
const coarseGrid = 160;

/** About where a flock's share lies, on the logit. */
function placeOf({ a, b }: ShareBelief): readonly [middle: number, deviation: number] {
  return [ln(a / b), Math.sqrt(1 / a + 1 / b)];
}

/** Logits between the shares where the beliefs change: dense where they do. */
function gridFor(beliefs: readonly ShareBelief[], size: number): Float64Array {
  const step = Math.max(1, Math.floor(beliefs.length / 2000));
  const steps = 40;
  const points: number[] = [];
  for (let index = 0; index < beliefs.length; index += step) {
    const [middle, deviation] = placeOf(beliefs[index] as ShareBelief);
    for (let k = 0; k <= steps; k++) points.push(middle + reach * deviation * ((2 * k) / steps - 1));
  }
  const sorted = Float64Array.from(points).sort();
  return Float64Array.from({ length: size }, (_, index) => {
    const at = (index * (sorted.length - 1)) / (size - 1);
    return sorted[Math.round(at)] ?? 0;
  });
}

// So many standard deviations from its middle a belief has changed all it will.
const reach = 4.5;

/** For each flock the chance that its share is lower than each grid point; where it is 0 or 1 throughout is not kept. */
interface Lower {
  readonly from: number;
  /** Chances from the grid point `from` on; before it they are 0, behind them 1. */
  readonly chances: Float64Array;
}

type Fill = (belief: ShareBelief, logits: Float64Array) => Float64Array;

function lowerAt(beliefs: readonly ShareBelief[], grid: Float64Array, fill: Fill): readonly Lower[] {
  // Flocks with the same counts share one belief.
  const known = new Map<ShareBelief, Lower>();
  return beliefs.map((belief) => {
    const found = known.get(belief) ?? lowerOf(belief, grid, fill);
    known.set(belief, found);
    return found;
  });
}

const exactly: Fill = ({ a, b }, logits) =>
  logits.map((logit) => betaTails(1 / (1 + exp(-logit)), a, b, 1 / (1 + exp(logit))).lower);

/** In proportion between a few exact values: with hundreds of flocks no rank turns on a thousandth of one of them. */
const betweenExact: Fill = (belief, logits) => {
  const [first = 0, last = 0] = [logits[0], logits.at(-1)];
  const parts = 20;
  if (logits.length <= parts) return exactly(belief, logits);
  const width = (last - first) / parts;
  const known = exactly(
    belief,
    Float64Array.from({ length: parts + 1 }, (_, part) => first + part * width),
  );
  return logits.map((logit) => {
    const at = (logit - first) / width;
    const part = Math.min(Math.floor(at), parts - 1);
    const [before, after] = [known[part] ?? 0, known[part + 1] ?? 1];
    return before + (at - part) * (after - before);
  });
};

function lowerOf({ a, b }: ShareBelief, grid: Float64Array, fill: Fill): Lower {
  const [middle, deviation] = placeOf({ a, b });
  // A belief with a parameter below 1 reaches further than its deviation tells.
  const away = reach * 1.5 * deviation;
  const from = firstAbove(grid, middle - away);
  const to = firstAbove(grid, middle + away);
  return { from, chances: fill({ a, b }, grid.subarray(from, to)) };
}

function firstAbove(sorted: Float64Array, value: number): number {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle] ?? 0) > value) high = middle;
    else low = middle + 1;
  }
  return low;
}

const chanceAt = ({ from, chances }: Lower, index: number): number =>
  index < from ? 0 : index >= from + chances.length ? 1 : (chances[index - from] ?? 0);

/** Every rank's chance for each flock, summed over the grid. */
function exactRanks(lower: readonly Lower[], confidence: number): readonly Interval[] {
  const flocks = lower.length;
  const size = fineGrid;
  const ranks = lower.map(() => new Float64Array(flocks));
  // Place g stands for the shares between the grid points g − 1 and g, and beyond the ends.
  for (let g = 0; g <= size; g++) {
    const before = lower.map((one) => (g === 0 ? 0 : chanceAt(one, g - 1)));
    const after = lower.map((one) => (g === size ? 1 : chanceAt(one, g)));
    const within = before.map((chance, flock) => (chance + (after[flock] ?? 0)) / 2);
    const counts = numberLower(within);
    ranks.forEach((chances, flock) => {
      const here = (after[flock] ?? 0) - (before[flock] ?? 0);
      if (here > 1e-9) addWithout(chances, counts, within[flock] ?? 0, here);
    });
  }
  const tail = (1 - confidence) / 2;
  return ranks.map((chances) => ({ low: rankBeyond(chances, tail), high: rankBeyond(chances, 1 - tail) }));
}

/** The chances that 0, 1, 2 … of all flocks are lower. */
function numberLower(chances: readonly number[]): Float64Array {
  const counts = new Float64Array(chances.length + 1);
  counts[0] = 1;
  chances.forEach((chance, flock) => {
    for (let k = flock + 1; k > 0; k--) counts[k] = (counts[k] ?? 0) * (1 - chance) + (counts[k - 1] ?? 0) * chance;
    counts[0] = (counts[0] ?? 0) * (1 - chance);
  });
  return counts;
}

/** Adds the chances of the numbers of other flocks that are lower: one flock is taken out again, from its likelier side. */
function addWithout(sums: Float64Array, counts: Float64Array, chance: number, weight: number): void {
  const others = sums.length - 1;
  let before = 0;
  if (chance < 0.5) {
    for (let k = 0; k <= others; k++) {
      before = ((counts[k] ?? 0) - before * chance) / (1 - chance);
      sums[k] = (sums[k] ?? 0) + weight * before;
    }
    return;
  }
  for (let k = others; k >= 0; k--) {
    before = ((counts[k + 1] ?? 0) - before * (1 - chance)) / chance;
    sums[k] = (sums[k] ?? 0) + weight * before;
  }
}

function rankBeyond(chances: Float64Array, wanted: number): number {
  const all = chances.reduce((sum, chance) => sum + chance, 0);
  let sum = 0;
  for (let index = 0; index < chances.length; index++) {
    sum += (chances[index] ?? 0) / all;
    if (sum >= wanted) return index + 1;
  }
  return chances.length;
}

/** Expected ranks at the ends of each flock's own range, with the chance in the others added. */
function roughRanks(flocks: number, lower: readonly Lower[], confidence: number): readonly Interval[] {
  const size = coarseGrid;
  const expected = new Float64Array(size + 1);
  const variance = new Float64Array(size + 1);
  for (const { from, chances } of lower) {
    chances.forEach((chance, index) => {
      expected[from + index] = (expected[from + index] ?? 0) + chance;
      variance[from + index] = (variance[from + index] ?? 0) + chance * (1 - chance);
    });
    expected[size] = (expected[size] ?? 0) + 1;
  }
  addWholeOnes(expected, lower, size);
  const z = normalScore(confidence);
  const tail = (1 - confidence) / 2;
  const rankAt = (one: Lower, chance: number): readonly [rank: number, variance: number] => {
    const { from, chances } = one;
    let index = firstAbove(chances, chance);
    // Between two grid points in proportion to the chance.
    const [low, high] = [index === 0 ? 0 : (chances[index - 1] ?? 0), chances[index] ?? 1];
    const part = high > low ? (chance - low) / (high - low) : 0.5;
    index += from;
    const mixed = (values: Float64Array): number => {
      const [one, other] = [values[Math.max(index - 1, 0)] ?? 0, values[Math.min(index, size - 1)] ?? 0];
      return one + part * (other - one);
    };
    return [1 + mixed(expected) - chance, mixed(variance)];
  };
  const known = new Map<Lower, Interval>();
  return lower.map((one) => {
    const found = known.get(one);
    if (found) return found;
    const [middle] = rankAt(one, 0.5);
    const [[low, lowVariance], [high, highVariance]] = [rankAt(one, tail), rankAt(one, 1 - tail)];
    const ranks = {
      low: Math.max(1, Math.round(middle - Math.sqrt((middle - low) * (middle - low) + z * z * lowVariance))),
      high: Math.min(flocks, Math.round(middle + Math.sqrt((high - middle) * (high - middle) + z * z * highVariance))),
    };
    known.set(one, ranks);
    return ranks;
  });
}

/** Flocks that are lower for certain count in full at every grid point behind their own. */
function addWholeOnes(expected: Float64Array, lower: readonly Lower[], size: number): void {
  const begin = new Float64Array(size + 1);
  for (const { from, chances } of lower) {
    const to = Math.min(from + chances.length, size);
    begin[to] = (begin[to] ?? 0) + 1;
  }
  let whole = 0;
  for (let index = 0; index < size; index++) {
    whole += begin[index] ?? 0;
    expected[index] = (expected[index] ?? 0) + whole;
  }
}
