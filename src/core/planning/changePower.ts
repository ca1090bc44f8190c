import { binomialDensity } from "../statistics/binomialDensity.ts";
import { binomialTails } from "../statistics/binomialTails.ts";
import { rejectionBounds } from "./rejectionBounds.ts";

/**
 * The chance that Fisher's exact test shows a change between two looks at n sheep each, when the shares lame are so.
 *
 * Exact: summed over every pair of counts that can come.
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
  const [from, to] = [lowest(n, before), n - lowest(n, 1 - before)];
  return rejectionBounds(n, level, from, to).reduce((sum, { first, last }, place) => {
    const low = first > 0 ? binomialTails(first - 1, n, after).lower : 0;
    const high = last < n ? binomialTails(last + 1, n, after).upper : 0;
    return sum + binomialDensity(from + place, n, before) * (low + high);
  }, 0);
}

/** The lowest count that is not rarer than 1 in a million million. */
function lowest(n: number, share: number): number {
  let [rare, common] = [-1, Math.floor(n * share)];
  while (common - rare > 1) {
    const middle = Math.floor((common + rare) / 2);
    if (binomialTails(middle, n, share).lower < 1e-12) rare = middle;
    else common = middle;
  }
  return common;
}
