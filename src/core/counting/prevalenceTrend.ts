import type { Day } from "../../cells/day.ts";
import { nothingToReport, Problem } from "../../cells/problem.ts";
import { normalTwoSided } from "../statistics/normalTwoSided.ts";
import { studentTwoSided } from "../statistics/studentTwoSided.ts";
import type { Spread } from "./countedLooks.ts";
import { joinedInflation, priorGathers } from "./gatherSpread.ts";
import { pooledPrevalence } from "./pooledPrevalence.ts";

export interface PrevalenceTrend {
  /** Change of the share in 30 days, by the straight line of least squares through all sheep seen. */
  readonly changePer30Days: number;
  /** The slope in its standard errors: above 0 the share rises. By chance alone, the Cochran–Armitage statistic. */
  readonly z: number;
  /** Two-sided. */
  readonly p: number;
}

/**
 * Whether the share lame rises or falls over time: the weighted line through the gathers.
 *
 * With "gathers" the scatter of the gathers about the line widens the standard error (quasi-binomial), joined with what is
 * supposed where gathers are few (gatherSpread), and p is that of Student's t. With "chance" each look at a sheep is
 * taken as drawn by itself: the Cochran–Armitage test with the days as scores.
 *
 * Shares that are all 0 or all 1 show no change: 0, 0 and p = 1.
 *
 * @param dates the day of each row; rows of one day are one gather
 * @param lame lame sheep a row
 * @param seen sheep seen a row
 * @throws Problem when a row has more lame than seen; #N/A when sheep were seen on one day only, or on none
 * @source Armitage 1955, Biometrics 11:375; Agresti, Categorical Data Analysis, 5.3.5; McCullagh & Nelder 1989, Generalized
 *   Linear Models, 4.5 (dispersion)
 * @example
 * prevalenceTrend([46000, 46030], [8, 4], [40, 40]).changePer30Days // → −0.1
 */
export function prevalenceTrend(
  dates: readonly Day[],
  lame: readonly number[],
  seen: readonly number[],
  spread: Spread = "gathers",
): PrevalenceTrend {
  const { share, seen: all } = pooledPrevalence(lame, seen);
  if (dates.length !== seen.length) {
    throw new Problem(`dates has ${dates.length} rows and seen has ${seen.length}; give both the same rows`, {
      argument: "dates",
    });
  }
  const days = daysOf(dates, lame, seen);
  const middle = days.reduce((sum, { day, seen: n }) => sum + day * n, 0) / all;
  let [width, excess] = [0, 0];
  for (const { day, lame: x, seen: n } of days) {
    const away = day - middle;
    width += n * away * away;
    excess += (x - n * share) * away;
  }
  if (width === 0) throw nothingToReport("sheep were seen on one day only; a trend needs two", { argument: "dates" });
  if (share === 0 || share === 1) return { changePer30Days: 0, z: 0, p: 1 };
  const slope = excess / width;
  const plain = excess / Math.sqrt(share * (1 - share) * width);
  if (spread === "chance") return { changePer30Days: 30 * slope, z: plain, p: normalTwoSided(plain) };
  const freedom = days.length - 2;
  const scatter = days.reduce((sum, { day, lame: x, seen: n }) => {
    const off = x - n * (share + slope * (day - middle));
    return sum + (off * off) / n;
  }, 0);
  const found = freedom === 0 ? 1 : scatter / (freedom * share * (1 - share));
  const size = days.reduce((sum, { seen: n }) => sum + n * n, 0) / all;
  const z = plain / Math.sqrt(joinedInflation(found, freedom, size));
  return { changePer30Days: 30 * slope, z, p: studentTwoSided(z, priorGathers + freedom) };
}

interface DayCount {
  /** Counted from the first one, so that squares keep all digits. */
  readonly day: number;
  readonly lame: number;
  readonly seen: number;
}

function daysOf(dates: readonly Day[], lame: readonly number[], seen: readonly number[]): readonly DayCount[] {
  const first = dates.reduce((earliest, day) => Math.min(earliest, day), Infinity);
  const byDay = new Map<Day, { day: number; lame: number; seen: number }>();
  dates.forEach((date, row) => {
    const count = byDay.get(date) ?? { day: date - first, lame: 0, seen: 0 };
    count.lame += lame[row] ?? 0;
    count.seen += seen[row] ?? 0;
    byDay.set(date, count);
  });
  return [...byDay.values()].filter((count) => count.seen > 0);
}
