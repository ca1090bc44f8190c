/**
 * The chances of 0, 1, … n lame sheep under a beta-binomial distribution, in times of the chance of `middle` lame.
 *
 * By the ratio of neighbours, one division a count.
 *
 * @param n sheep seen, whole number from 1
 * @param a above 0
 * @param b above 0
 * @param middle a count near the mean, from which all others are reached
 * @source Skellam 1948, J R Stat Soc B 10:257
 * @example
 * [...relativeChances(2, 1, 1, 1)] // → [1, 1, 1]
 */
export function relativeChances(n: number, a: number, b: number, middle: number): Float64Array {
  const chances = new Float64Array(n + 1);
  chances[middle] = 1;
  for (let x = middle; x < n; x++)
    chances[x + 1] = ((chances[x] ?? 0) * (n - x) * (a + x)) / ((x + 1) * (b + n - x - 1));
  for (let x = middle; x > 0; x--) chances[x - 1] = ((chances[x] ?? 0) * x * (b + n - x)) / ((n - x + 1) * (a + x - 1));
  return chances;
}
