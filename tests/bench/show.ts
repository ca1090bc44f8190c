/** Milliseconds in the unit that reads best. */
export function showTime(milliseconds: number): string {
  if (milliseconds < 1) return `${Number((1000 * milliseconds).toPrecision(3))} µs`;
  return milliseconds < 1000
    ? `${Number(milliseconds.toPrecision(3))} ms`
    : `${(milliseconds / 1000).toPrecision(3)} s`;
}

/** How many times as long as another. */
export const showRatio = (time: number, other: number): string => `${Number((time / other).toPrecision(3))}`;

/** The largest relative error of values against references, and how many values are none. */
export function showErrors(values: readonly number[], references: readonly number[]): string {
  const errors = values.map((value, index) => relativeError(value, references[index] ?? Number.NaN));
  const missing = errors.filter(Number.isNaN).length;
  const largest = Math.max(0, ...errors.filter((error) => error >= 0)).toExponential(1);
  return missing === 0 ? largest : `${largest}; no number for ${missing}`;
}

const relativeError = (value: number, reference: number): number =>
  value === reference ? 0 : Math.abs(value - reference) / Math.abs(reference);
