import { binomialDensity } from "../statistics/binomialDensity.ts";
import { fisherEdges } from "./fisherEdges.ts";

/**
 * The chance that Fisher's exact test shows a change between two looks at n sheep each, when the shares lame are so.
 *
 * Exact: summed over every pair of counts that can come, but for counts rarer than 1 in 10¹⁸.
 *
 * @param n sheep at each look, whole number from 1
 * @param before true share at the first look, 0 to 1
 * @param after at the second
 * @param level p at or below which the test speaks of a change, such as 0.05
 * @returns 0 to 1
 * @source Fisher 1935 (test); the sum over the tables by definition
 * @example
 * changePower(4, 0, 1, 0.05) // → 1
 */
export function changePower(n: number, before: number, after: number, level: number): number {
  const [first, second] = [countsOf(n, before), countsOf(n, after)];
  const totals = first.from + second.from;
  const edges = fisherEdges(n, level, totals, totals + first.chances.length + second.chances.length - 2);
  const edge = (x: number, y: number): number => edges[x + y - totals] ?? -1;
  const most = second.from + second.chances.length;
  // Both ends of the counts that show no change only rise with the first count, so each walks on from where it stood.
  let [low, high, below] = [second.from, second.from, 0];
  let above = second.chances.reduce((sum, chance) => sum + chance, 0);
  let power = 0;
  first.chances.forEach((chance, index) => {
    const x = first.from + index;
    while (low < most && low < x && low <= edge(x, low)) below += second.chances[low++ - second.from] ?? 0;
    while (high < most && (high <= x || x > edge(x, high))) above -= second.chances[high++ - second.from] ?? 0;
    power += chance * (below + above);
  });
  return Math.min(Math.max(power, 0), 1);
}

/** The chances of the counts lame that can come, from the lowest on: outwards from the likeliest by the ratio of neighbours. */
function countsOf(n: number, share: number): { readonly from: number; readonly chances: readonly number[] } {
  const likeliest = Math.min(Math.floor((n + 1) * share), n);
  const height = binomialDensity(likeliest, n, share);
  const odds = share / (1 - share);
  const fewer: number[] = [];
  for (let x = likeliest, chance = height; x > 0; x--) {
    chance *= x / ((n - x + 1) * odds);
    if (chance < rarest) break;
    fewer.push(chance);
  }
  const more = [height];
  for (let x = likeliest, chance = height; x < n; x++) {
    chance *= ((n - x) * odds) / (x + 1);
    if (chance < rarest) break;
    more.push(chance);
  }
  return { from: likeliest - fewer.length, chances: [...fewer.reverse(), ...more] };
}

const rarest = 1e-18;
