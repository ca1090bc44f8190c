/**
 * The sum of a column.
 *
 * @example
 * sumOf([2, 0, 4]) // → 6
 */
export function sumOf(counts: ArrayLike<number>): number {
  let total = 0;
  for (let row = 0; row < counts.length; row++) total += counts[row] as number;
  return total;
}
