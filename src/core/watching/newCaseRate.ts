import { nothingToReport } from "../../cells/problem.ts";
import type { Interval } from "../statistics/interval.ts";
import { poissonInterval } from "../statistics/poissonInterval.ts";

export interface Rate extends Interval {
  readonly rate: number;
}

/** A hundred sheep-years in days. */
export const hundredSheepYears = 36_525;

/**
 * New cases for so many sheep-days at risk, with Garwood's exact interval.
 *
 * @param newCases whole number from 0
 * @param sheepDays sheep × days, 0 or more
 * @param confidence 0 < confidence < 1
 * @param per sheep-days the rate is given for; 36525 is a hundred sheep-years
 * @returns cases per `per` sheep-days
 * @throws #N/A when there are no sheep-days
 * @example
 * newCaseRate(11, 292_200, 0.95) // → { rate: 1.375, low: 0.6863950459…, high: 2.4602548140… }
 */
export function newCaseRate(
  newCases: number,
  sheepDays: number,
  confidence: number,
  per: number = hundredSheepYears,
): Rate {
  if (sheepDays === 0) throw nothingToReport("0 sheep-days give no rate", { argument: "sheep_days" });
  const { low, high } = poissonInterval(newCases, confidence);
  const scale = per / sheepDays;
  return { rate: newCases * scale, low: low * scale, high: high * scale };
}
