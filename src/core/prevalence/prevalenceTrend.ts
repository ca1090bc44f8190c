import type { Day } from "../../cells/day.ts";
import { nothingToReport, Problem } from "../../cells/problem.ts";
import { normalTwoSided } from "../distributions/normalTwoSided.ts";
import { pooledPrevalence } from "./pooledPrevalence.ts";

export interface PrevalenceTrend {
  /** Change of the share in 30 days, by the straight line of least squares through all sheep seen. */
  readonly changePer30Days: number;
  /** Cochran–Armitage statistic: above 0 the share rises. */
  readonly z: number;
  /** Two-sided. */
  readonly p: number;
}

/**
 * Whether the share lame rises or falls over time: Cochran–Armitage test with the days as scores.
 *
 * Shares that are all 0 or all 1 show no change: 0, 0 and p = 1.
 *
 * @param dates the day of each row
 * @param lame lame sheep a row
 * @param seen sheep seen a row
 * @throws Problem when a row has more lame than seen; #N/A when sheep were seen on one day only, or on none
 * @source Armitage 1955, Biometrics 11:375; Agresti, Categorical Data Analysis, 5.3.5
 * @example
 * prevalenceTrend([46000, 46030], [8, 4], [40, 40]).changePer30Days // → −0.1
 */
export function prevalenceTrend(
  dates: readonly Day[],
  lame: readonly number[],
  seen: readonly number[],
): PrevalenceTrend {
  const { share, seen: all } = pooledPrevalence(lame, seen);
  if (dates.length !== seen.length) {
    throw new Problem(`dates has ${dates.length} rows and seen has ${seen.length}; give both the same rows`, {
      argument: "dates",
    });
  }
  // Days are counted from the first one, so that their squares keep all digits.
  const first = dates.reduce((earliest, day) => Math.min(earliest, day), Infinity);
  const middle = dates.reduce((sum, day, row) => sum + (day - first) * (seen[row] ?? 0), 0) / all;
  let [spread, excess] = [0, 0];
  dates.forEach((day, row) => {
    const [n, x, away] = [seen[row] ?? 0, lame[row] ?? 0, day - first - middle];
    spread += n * away * away;
    excess += (x - n * share) * away;
  });
  if (spread === 0) throw nothingToReport("sheep were seen on one day only; a trend needs two", { argument: "dates" });
  if (share === 0 || share === 1) return { changePer30Days: 0, z: 0, p: 1 };
  const z = excess / Math.sqrt(share * (1 - share) * spread);
  return { changePer30Days: (30 * excess) / spread, z, p: normalTwoSided(z) };
}
