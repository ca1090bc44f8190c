import { nothingToReport, Problem } from "../../cells/problem.ts";
import { binomialTwoSided } from "../statistics/binomialTwoSided.ts";
import { exactInterval } from "../statistics/exactInterval.ts";
import type { Interval } from "../statistics/interval.ts";

/** Cases and the sheep-days in which they came. */
export interface CasesInTime {
  /** Whole number from 0. */
  readonly cases: number;
  /** Above 0. */
  readonly days: number;
}

export interface RateChange extends Interval {
  /** Rate after / rate before; Infinity when there was no case before. */
  readonly ratio: number;
  /** Exact two-sided p, given the number of cases in all. */
  readonly p: number;
}

/**
 * How the rate of new cases changed: ratio of the two rates, with the exact interval given the total of cases.
 *
 * @param before cases and sheep-days before
 * @param after cases and sheep-days after
 * @param confidence 0 < confidence < 1
 * @returns ratio and limits (`high` and `ratio` are Infinity with no case before, `low` is 0 with none after), and p
 * @throws Problem when there are no sheep-days; #N/A when there was no case at all
 * @source Przyborowski & Wilenski 1940, Biometrika 31:313 (conditional test); Clopper & Pearson 1934 (limits)
 * @example
 * rateChange({ cases: 15, days: 19_017 }, { cases: 41, days: 28_010 }, 0.95)
 * // → { ratio: 1.855758658…, low: 1.005684063…, high: 3.609300311…, p: 0.04085203… }
 */
export function rateChange(before: CasesInTime, after: CasesInTime, confidence: number): RateChange {
  refuseNoTime(before, "days_before");
  refuseNoTime(after, "days_after");
  const cases = before.cases + after.cases;
  if (cases === 0)
    throw nothingToReport("there was no case before or after, so there is no ratio", { argument: "cases_before" });
  const daysRatio = before.days / after.days;
  // What is left of the share to 1 is known to all its digits as the share of the cases before.
  const of = exactInterval(after.cases, cases, confidence);
  const rest = exactInterval(before.cases, cases, confidence);
  return {
    ratio: (after.cases / before.cases) * daysRatio,
    low: (of.low / rest.high) * daysRatio,
    high: (of.high / rest.low) * daysRatio,
    p:
      after.days <= before.days
        ? binomialTwoSided(after.cases, cases, after.days / (before.days + after.days))
        : binomialTwoSided(before.cases, cases, before.days / (before.days + after.days)),
  };
}

function refuseNoTime({ days }: CasesInTime, argument: string): void {
  if (days <= 0) throw new Problem(`${days} sheep-days give no rate; enter sheep-days above 0`, { argument });
}
