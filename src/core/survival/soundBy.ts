import { nothingToReport } from "../../cells/problem.ts";
import { kaplanMeier, type Watched } from "./kaplanMeier.ts";

export interface SoundShare {
  /** Share sound within the days, 0 to 1. */
  readonly share: number;
  /** Limits; undefined when none or all are sound by then, where the method has none. */
  readonly low: number | undefined;
  readonly high: number | undefined;
}

/**
 * The share of treated animals that are sound within `byDays` of treatment, animals still lame counted for as long as
 * they were watched.
 *
 * @throws Problem (#N/A) when no animal was treated, or when none that is still lame was watched for so long
 * @see kaplanMeier for method and sources
 * @example
 * soundBy([{ days: 3, sound: true }, { days: 5, sound: false }], 4, 0.95).share // → 0.5
 */
export function soundBy(animals: readonly Watched[], byDays: number, confidence: number): SoundShare {
  if (animals.length === 0) throw nothingToReport("no treated animal is recorded", { argument: "treated" });
  const longest = animals.reduce((most, { days }) => Math.max(most, days), 0);
  const curve = kaplanMeier(animals, confidence);
  const step = curve.filter(({ day }) => day <= byDays).at(-1);
  const stillLame = step?.stillLame ?? 1;
  if (byDays > longest && stillLame > 0)
    throw nothingToReport(
      `no animal was watched for ${byDays} days and some were still lame; the longest is ${longest}, so ask for ${longest} or fewer`,
      { argument: "by_days" },
    );
  return {
    share: 1 - stillLame,
    low: step?.limits && 1 - step.limits.high,
    high: step?.limits && 1 - step.limits.low,
  };
}
