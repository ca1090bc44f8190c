/** The two ends of a range, as shares from 0 to 1 unless said otherwise. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}
