/** A moving average and how much it varies by chance. */
export interface WeightedAverage {
  readonly average: number;
  readonly variance: number;
}

/**
 * Exponentially weighted moving averages, each with its exact variance.
 *
 * @param values in order of time
 * @param variances of each value, same length
 * @param choice weight of the newest value (0 < weight ≤ 1) and the average before the first
 * @example
 * weightedAverages([52, 47], [4, 4], { weight: 0.3, start: 50 }).map(({ average }) => average) // → [50.6, 49.52]
 */
export function weightedAverages(
  values: readonly number[],
  variances: readonly number[],
  { weight, start }: { readonly weight: number; readonly start: number },
): readonly WeightedAverage[] {
  let [average, variance] = [start, 0];
  return values.map((value, index) => {
    average += weight * (value - average);
    variance = weight * weight * (variances[index] ?? 0) + (1 - weight) * (1 - weight) * variance;
    return { average, variance };
  });
}
