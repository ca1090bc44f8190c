import { type FindPlan, sampleToFind } from "./sampleToFind.ts";

/**
 * The answer of sampleToFind for a cell: the number, or a sentence when the whole flock is not enough.
 *
 * @example
 * sampleToFindText({ flockSize: 40, designPrevalence: 0.02, confidence: 0.95, sensitivity: 0.8 })
 * // → "cannot reach 95 %: even all 40 sheep are not enough, they give 80 %"
 */
export function sampleToFindText(plan: FindPlan): number | string {
  const answer = sampleToFind(plan);
  if (answer.sheep !== undefined) return answer.sheep;
  return `cannot reach ${percent(plan.confidence)}: even all ${plan.flockSize} sheep are not enough, they give ${percent(answer.best)}`;
}

// Enough digits that the chance reached never reads as the one wanted.
const percent = (share: number): string => `${Number((100 * share).toPrecision(4))} %`;
