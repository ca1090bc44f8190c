import ln from "@stdlib/math-base-special-ln";
/**
 * How many standard deviations out the upper tail of a normal distribution holds the chance `p`, to three digits:
 * a first guess only (Abramowitz & Stegun 26.2.23, error below 4.5e-4).
 *
 * @param p 0 < p < 1
 * @example
 * roughNormalScore(0.025).toFixed(2) // → "1.96"
 */
export function roughNormalScore(p: number): number {
  if (p > 0.5) return -roughNormalScore(1 - p);
  const t = Math.sqrt(-2 * ln(p));
  return t - (2.515517 + t * (0.802853 + t * 0.010328)) / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308)));
}
