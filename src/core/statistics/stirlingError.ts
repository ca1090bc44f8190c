import log1p from "@stdlib/math-base-special-log1p";

const half = 0.5;

/** From here on six terms of Stirling's series are exact to the last digit. */
const seriesFrom = 16;

const series = (z: number): number => {
  const w = 1 / (z * z);
  return (1 / 12 - w * (1 / 360 - w * (1 / 1260 - w * (1 / 1680 - w * (1 / 1188 - (w * 691) / 360360))))) / z;
};

// Γ(z + 1) = z Γ(z) turned into steps of the error, each exact to rounding.
const byRecurrence = (z: number): number =>
  z >= seriesFrom ? series(z) : byRecurrence(z + 1) + (z + half) * log1p(1 / z) - 1;

// Counts and counts and a half are what intervals ask for, again and again.
const halves = Array.from({ length: 2 * seriesFrom }, (_, twice) => (twice === 0 ? Infinity : byRecurrence(twice / 2)));

/**
 * What Stirling's formula leaves out: ln Γ(z + 1) − ((z + ½) ln z − z + ½ ln 2π).
 *
 * Densities built on it keep their relative accuracy for counts up to ten million, where differences of
 * log-gamma values lose it (Loader 2000, "Fast and accurate computation of binomial probabilities").
 *
 * @param z a number above 0
 * @returns the error, absolute accuracy about 1e-15
 * @example
 * stirlingError(1) // → 0.08106146679532726
 */
export function stirlingError(z: number): number {
  if (z >= seriesFrom) return series(z);
  return (Number.isInteger(2 * z) ? halves[2 * z] : undefined) ?? byRecurrence(z);
}
