import ln from "@stdlib/math-base-special-ln";
/**
 * x ln(x / m) + m − x without the cancellation of the plain formula when x is near m (Loader 2000).
 *
 * @param x what was counted, above 0
 * @param m what was expected, above 0
 * @example
 * deviance(3, 3) // → 0
 */
export function deviance(x: number, m: number): number {
  const gap = x - m;
  if (Math.abs(gap) >= 0.1 * (x + m)) return x * ln(x / m) - gap;
  const v = gap / (x + m);
  let sum = gap * v;
  let power = 2 * x * v;
  for (let j = 3; ; j += 2) {
    power *= v * v;
    const next = sum + power / j;
    if (next === sum) return sum;
    sum = next;
  }
}
