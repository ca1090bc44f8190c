const width = 24;

/**
 * How far long work has come, in one line.
 *
 * @example
 * progressBar(6, 12, "farm.xlsx") // → "[############------------] 6 of 12  farm.xlsx"
 */
export function progressBar(done: number, all: number, words: string): string {
  const filled = Math.round((width * done) / Math.max(all, 1));
  return `[${"#".repeat(filled)}${"-".repeat(width - filled)}] ${done} of ${all}  ${words}`;
}
