import { jStat } from "../bench/jStat.ts";

/** Lame and seen sheep. */
export interface Counted {
  readonly lame: number;
  readonly seen: number;
}

// The figures of a comparison by other ways than the functions': the textbook formulas with another library's normal
// quantile, and whole-number arithmetic without any rounding where the answer is a count of cases.

/** Wilson 1927: the shares that a score test does not reject. */
export function rangeByHand({ lame, seen }: Counted): readonly [number, number] {
  const z = jStat.normal.inv(0.975, 0, 1);
  const share = lame / seen;
  const middle = share + z ** 2 / (2 * seen);
  const half = z * Math.sqrt((share * (1 - share)) / seen + z ** 2 / (4 * seen ** 2));
  const whole = 1 + z ** 2 / seen;
  return [(middle - half) / whole, (middle + half) / whole];
}

/** Newcombe 1998, method 10: difference, low, high. */
export function changeByHand(before: Counted, now: Counted): readonly [number, number, number] {
  const [one, other] = [now.lame / now.seen, before.lame / before.seen];
  const [[low, high], [lowBefore, highBefore]] = [rangeByHand(now), rangeByHand(before)];
  const change = one - other;
  return [change, change - root(one - low, highBefore - other), change + root(high - one, other - lowBefore)];
}

const root = (one: number, other: number): number => Math.sqrt(one ** 2 + other ** 2);

/** Fisher's exact p: all tables with these totals, counted one by one. */
export function chanceByHand(before: Counted, now: Counted): number {
  const lame = before.lame + now.lame;
  const tables = Array.from({ length: lame + 1 }, (_, x) => choose(now.seen, x) * choose(before.seen, lame - x));
  const observed = tables[now.lame] ?? 0n;
  const asUnlikely = tables.filter((count) => count <= observed).reduce((sum, count) => sum + count, 0n);
  return ratio(asUnlikely, choose(before.seen + now.seen, lame));
}

function choose(n: number, k: number): bigint {
  if (k < 0 || k > n) return 0n;
  let ways = 1n;
  for (let step = 1; step <= k; step++) ways = (ways * BigInt(n - k + step)) / BigInt(step);
  return ways;
}

/** Where a flock stands among all flocks: Spiegelhalter 2005, A.1.1, with the binomial distribution summed exactly. */
export function wordByHand({ lame, seen }: Counted, all: Counted): string {
  const limits = [0.001, 0.025, 0.975, 0.999].map((chance) => limitByHand(chance, seen, all));
  const [low998 = 0, low95 = 0, high95 = 0, high998 = 0] = limits;
  if (lame > high998) return "above the 99.8 % limit";
  if (lame > high95) return "above the 95 % limit";
  if (lame < low998) return "below the 99.8 % limit";
  return lame < low95 ? "below the 95 % limit" : "within the limits";
}

function limitByHand(chance: number, seen: number, all: Counted): number {
  const [a, b] = [BigInt(all.lame), BigInt(all.seen - all.lame)];
  const whole = BigInt(all.seen) ** BigInt(seen);
  let term = b ** BigInt(seen);
  let upTo = term;
  let count = 0;
  while (ratio(upTo, whole) <= chance) {
    term = (term * BigInt(seen - count) * a) / (BigInt(count + 1) * b);
    upTo += term;
    count++;
  }
  return count - (ratio(upTo, whole) - chance) / ratio(term, whole);
}

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

const digits = 10n ** 40n;
const ratio = (part: bigint, whole: bigint): number => Number((part * digits) / whole) / Number(digits);
