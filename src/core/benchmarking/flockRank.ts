import { nothingToReport } from "../../cells/problem.ts";

/**
 * The share of the other flocks that a flock does better than; flocks that do the same count half.
 *
 * @param value the flock's own value
 * @param values those of the other flocks
 * @param lowIsGood whether a lower value is better
 * @returns 0 to 1
 * @throws #N/A without another flock
 * @example
 * flockRank(0.03, [0.02, 0.03, 0.05, 0.08], true) // → 0.625
 */
export function flockRank(value: number, values: readonly number[], lowIsGood: boolean): number {
  if (values.length === 0) throw nothingToReport("there is no other flock to compare with", { argument: "values" });
  const halves = values.reduce((sum, other) => {
    if (other === value) return sum + 1;
    return lowIsGood === value < other ? sum + 2 : sum;
  }, 0);
  return halves / 2 / values.length;
}
