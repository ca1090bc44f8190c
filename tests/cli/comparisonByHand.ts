import { jStat } from "../bench/jStat.ts";

/** Lame and seen sheep. */
export interface Counted {
  readonly lame: number;
  readonly seen: number;
}

// The figures of a comparison by other ways than the functions': the textbook formulas with another library's
// quantiles.

/**
 * To how many separate looks the gathers amount (Korn & Graubard 1998; the spread of a ratio between clusters, Cochran
 * 1977), joined with three gathers of an intra-gather correlation of 0.03, as docs/methods/counting.md says.
 */
function looksByHand(gathers: readonly Counted[], confidence: number): number {
  const all = pooled(gathers);
  const squares = gathers.reduce((sum, { seen }) => sum + seen ** 2, 0);
  const [share, weighty, supposed] = [
    all.lame / all.seen,
    all.seen ** 2 / squares,
    1 + (squares / all.seen - 1) * 0.03,
  ];
  const apart = gathers.reduce((sum, { lame, seen }) => sum + (lame - share * seen) ** 2, 0);
  const found = share === 0 ? 1 : (gathers.length / (gathers.length - 1)) * (apart / (all.seen * share * (1 - share)));
  const wider = Math.max(1, (3 * supposed + (weighty - 1) * found) / (weighty + 2));
  const tail = (1 + confidence) / 2;
  return (all.seen / wider) * (jStat.normal.inv(tail, 0, 1) / jStat.studentt.inv(tail, weighty + 2)) ** 2;
}

const pooled = (gathers: readonly Counted[]): Counted =>
  gathers.reduce(({ lame, seen }, gather) => ({ lame: lame + gather.lame, seen: seen + gather.seen }), {
    lame: 0,
    seen: 0,
  });

/** Wilson 1927: the shares that a score test does not reject, of as many looks as several gathers amount to. */
export function rangeByHand(gathers: readonly Counted[], confidence = 0.95): readonly [number, number] {
  const z = jStat.normal.inv((1 + confidence) / 2, 0, 1);
  const all = pooled(gathers);
  const seen = looksByHand(gathers, confidence);
  const lame = (all.lame / all.seen) * seen;
  const share = lame / seen;
  const middle = share + z ** 2 / (2 * seen);
  const half = z * Math.sqrt((share * (1 - share)) / seen + z ** 2 / (4 * seen ** 2));
  const whole = 1 + z ** 2 / seen;
  return [(middle - half) / whole, (middle + half) / whole];
}

/** Newcombe 1998, method 10: difference, low, high. */
export function changeByHand(
  before: readonly Counted[],
  now: readonly Counted[],
  confidence = 0.95,
): readonly [number, number, number] {
  const [one = 0, other = 0] = [now, before].map((gathers) => pooled(gathers).lame / pooled(gathers).seen);
  const [[low, high], [lowBefore, highBefore]] = [rangeByHand(now, confidence), rangeByHand(before, confidence)];
  const change = one - other;
  return [change, change - root(one - low, highBefore - other), change + root(high - one, other - lowBefore)];
}

const root = (one: number, other: number): number => Math.sqrt(one ** 2 + other ** 2);

/**
 * Steadied shares added up over a plain grid of means and correlations: flat in the mean and in the root of the
 * correlation, as docs/methods/benchmarking.md says. Good for three decimals, where the flocks lie below 40 %.
 */
export function steadiedByHand(flocks: readonly Counted[]): readonly number[] {
  const places: { readonly a: number; readonly size: number; readonly height: number }[] = [];
  for (let mean = 0.002; mean < 0.4; mean += 0.004)
    for (let root = 0.01; root < 0.8; root += 0.02) {
      const size = 1 / root ** 2 - 1;
      const a = mean * size;
      const height = flocks.reduce(
        (sum, { lame, seen }) => sum + logs(a, lame) + logs(size - a, seen - lame) - logs(size, seen),
        0,
      );
      places.push({ a, size, height });
    }
  const highest = Math.max(...places.map(({ height }) => height));
  const weights = places.map(({ height }) => Math.exp(height - highest));
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  return flocks.map(
    ({ lame, seen }) =>
      places.reduce((sum, { a, size }, at) => sum + ((weights[at] ?? 0) * (a + lame)) / (size + seen), 0) / all,
  );
}

/** ln(from) + ln(from + 1) + … over so many. */
function logs(from: number, many: number): number {
  let sum = 0;
  for (let step = 0; step < many; step++) sum += Math.log(from + step);
  return sum;
}
