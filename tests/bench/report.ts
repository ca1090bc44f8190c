/** What one bench found: a table and what to know about it. */
export interface BenchReport {
  readonly title: string;
  /** One record a line of the table; the headings are the keys of the first. */
  readonly rows: readonly Readonly<Record<string, string>>[];
  readonly notes: readonly string[];
}
