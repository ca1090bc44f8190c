import { fisherExact } from "../statistics/fisherExact.ts";

/**
 * Which pairs of counts Fisher's exact test calls a change: for each lame count of the first look, the counts of the
 * second between which it does not.
 *
 * Both ends only rise with the first count, so each is found by walking on from the one before.
 *
 * @param n sheep at each look
 * @param level p at or below which the test speaks of a change
 * @param from first count of the first look that matters
 * @param to last one
 * @returns for each count from `from` to `to`, the first and last count of the second look that show no change
 * @example
 * rejectionBounds(4, 0.05, 0, 0) // → [{ first: 0, last: 3 }]
 */
export function rejectionBounds(
  n: number,
  level: number,
  from: number,
  to: number,
): readonly { readonly first: number; readonly last: number }[] {
  const changed = (x: number, y: number): boolean => fisherExact(x, n, y, n) <= level;
  const bounds = [];
  let [first, last] = [edgeBelow(changed, from), edgeAbove(changed, from, n)];
  for (let x = from; x <= to; x++) {
    while (first < x && changed(x, first)) first++;
    while (last < n && !changed(x, last + 1)) last++;
    bounds.push({ first, last });
  }
  return bounds;
}

/** The lowest second count at or below x that shows no change: by halving, as the test only grows surer further off. */
function edgeBelow(changed: (x: number, y: number) => boolean, x: number): number {
  let [no, yes] = [x, -1];
  while (no - yes > 1) {
    const middle = Math.floor((no + yes) / 2);
    if (changed(x, middle)) yes = middle;
    else no = middle;
  }
  return no;
}

function edgeAbove(changed: (x: number, y: number) => boolean, x: number, n: number): number {
  let [no, yes] = [x, n + 1];
  while (yes - no > 1) {
    const middle = Math.floor((no + yes) / 2);
    if (changed(x, middle)) yes = middle;
    else no = middle;
  }
  return no;
}
