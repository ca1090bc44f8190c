import { Problem } from "../../cells/problem.ts";
import { normalScore } from "../statistics/normalScore.ts";
import { wholeUp } from "./wholeUp.ts";

export interface EstimatePlan {
  /** The share lame that is expected, above 0 and below 1. */
  readonly expected: number;
  /** Half the width of the range that is wanted, as a share: 0.01 for "within 1 %". */
  readonly precision: number;
  /** Sheep in the flock; left out, the flock is taken as endless. */
  readonly flockSize?: number | undefined;
  /** 0 < confidence < 1. */
  readonly confidence: number;
}

/**
 * How many sheep to look at to know the share lame within a margin.
 *
 * @returns sheep
 * @throws Problem when none or all are expected lame, or the margin is 0 or too fine for any number of sheep
 * @source Cochran 1977, Sampling Techniques, 4.4
 * @example
 * sampleToEstimate({ expected: 0.02, precision: 0.01, flockSize: 1000, confidence: 0.95 }) // → 430
 */
export function sampleToEstimate({ expected, precision, flockSize, confidence }: EstimatePlan): number {
  if (expected === 0 || expected === 1) {
    throw new Problem(
      `with ${expected} the sum asks for no sheep at all; enter the share nearest to a half that you think possible, or use SAMPLETOFIND`,
      { argument: "expected" },
    );
  }
  if (precision <= 0) {
    throw new Problem(`${precision} would need every sheep there is; enter a margin above 0, such as 0.01`, {
      argument: "precision",
    });
  }
  const z = normalScore(confidence);
  const endless = (z * z * expected * (1 - expected)) / (precision * precision);
  if (endless > Number.MAX_SAFE_INTEGER) {
    throw new Problem(`${precision} is finer than any look at sheep can tell; enter a margin such as 0.01`, {
      argument: "precision",
    });
  }
  return wholeUp(flockSize === undefined ? endless : endless / (1 + (endless - 1) / flockSize));
}
