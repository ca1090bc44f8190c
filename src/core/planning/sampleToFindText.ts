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
  const [wanted, best] = inPercentApart(plan.confidence, answer.best);
  return `cannot reach ${wanted}: even all ${plan.flockSize} sheep are not enough, they give ${best}`;
}

// The chance reached must never read as the one wanted, however near it comes.
function inPercentApart(one: number, other: number, digits = 4): readonly [string, string] {
  const [first, second] = [percent(one, digits), percent(other, digits)];
  return first === second && digits < allDigits ? inPercentApart(one, other, digits + 1) : [first, second];
}

const allDigits = 17;

const percent = (share: number, digits: number): string => `${Number((100 * share).toPrecision(digits))} %`;
