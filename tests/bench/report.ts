/** What one bench found: a table and what to know about it. */
export interface BenchReport {
  readonly title: string;
  /** One record a line of the table; the headings are the keys of the first. */
  readonly rows: readonly Readonly<Record<string, string>>[];
  readonly notes: readonly string[];
  /** What may not be passed: the run then ends with code 1. */
  readonly limits?: readonly Limit[];
}

/** A figure and the most that it may be. */
export interface Limit {
  readonly what: string;
  readonly measured: number;
  readonly most: number;
}
