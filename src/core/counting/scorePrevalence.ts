import { nothingToReport } from "../../cells/problem.ts";

/**
 * The share of the sheep scored that were lame, from scores on any scale that rises with lameness.
 *
 * @param scores one score a sheep; sheep not scored are left out
 * @param lameFrom the lowest score that is called lame
 * @returns share, 0 to 1
 * @throws #N/A when no sheep was scored
 * @example
 * scorePrevalence([0, 1, 2, 3], 2) // → 0.5
 */
export function scorePrevalence(scores: readonly number[], lameFrom: number): number {
  if (scores.length === 0) throw nothingToReport("no sheep was scored, so there is no share", { argument: "scores" });
  const lame = scores.reduce((count, score) => (score >= lameFrom ? count + 1 : count), 0);
  return lame / scores.length;
}
