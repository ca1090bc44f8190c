import { fisherExact } from "../statistics/fisherExact.ts";
import { hypergeometricDensity } from "../statistics/hypergeometricDensity.ts";
import { hypergeometricTails } from "../statistics/hypergeometricTails.ts";

/**
 * Where Fisher's exact test begins to speak of a change, for two looks at n sheep each: for every total of lame sheep, the
 * greatest count of the look with fewer lame at which it does.
 *
 * With two looks of one size the tables of a total are symmetric, so that p is twice the smaller tail. From one total to the
 * next the edge stays or rises by one, and its tail follows from the one before; where that comes near the level, the test
 * itself decides.
 *
 * @param n sheep at each look, whole number from 1
 * @param level p at or below which the test speaks of a change, 0 < level < 1
 * @param from first total of lame sheep at both looks
 * @param to last total, at most 2 n
 * @returns for each total from `from` to `to`; one fewer than the fewest that the total allows where no table is a change
 * @source Fisher 1935 (test)
 * @example
 * fisherEdges(4, 0.05, 3, 5) // → [-1, 0, 0]
 */
export function fisherEdges(n: number, level: number, from: number, to: number): readonly number[] {
  const half = level / 2;
  const density = (x: number, total: number): number => hypergeometricDensity(x, { N: 2 * n, M: total, n });
  const tailOf = (x: number, total: number): number => hypergeometricTails(x, { N: 2 * n, M: total, n }).lower;
  const changed = (x: number, total: number, tail: number): boolean =>
    Math.abs(tail - half) > near * half ? tail < half : fisherExact(x, n, total - x, n) <= level;

  let edge = firstEdge(n, from, (x) => changed(x, from, tailOf(x, from)));
  let here = density(edge, from);
  let tail = here === 0 ? 0 : tailOf(edge, from);
  const edges = [edge];
  for (let total = from; total < to; total++) {
    // One lame sheep more: it falls to the first look with the chance of a sheep not yet drawn there.
    tail -= (here * (n - edge)) / (2 * n - total);
    here *= ((n - total + edge) / (total + 1 - edge)) * ((total + 1) / (2 * n - total));
    const next =
      here > 0
        ? (here * (n - edge) * (total + 1 - edge)) / ((edge + 1) * (n - total + edge))
        : density(edge + 1, total + 1);
    if (changed(edge + 1, total + 1, tail + next)) {
      edge++;
      here = next;
      tail += next;
    }
    edges.push(edge);
  }
  return edges;
}

/** How near to the level a tail that was carried along is no longer trusted; its error stays far below. */
const near = 1e-8;

/** The greatest count of the first look at which `changed` holds, by halving; the counts below hold too. */
function firstEdge(n: number, total: number, changed: (x: number) => boolean): number {
  let [yes, no] = [Math.max(0, total - n) - 1, Math.ceil(total / 2)];
  while (no - yes > 1) {
    const middle = Math.floor((yes + no) / 2);
    if (changed(middle)) yes = middle;
    else no = middle;
  }
  return yes;
}
