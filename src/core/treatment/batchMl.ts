import Big from "big.js";
import { nothingToReport } from "../../cells/problem.ts";
import { atRow } from "../dates/clearDates.ts";
import { type Dosing, doseMl } from "./doseMl.ts";

export interface Batch {
  /** All doses and the spare, in ml. */
  readonly totalMl: number;
  /** Whole bottles that hold the total; undefined when no bottle is named. */
  readonly bottles: number | undefined;
  /** The largest single dose, in ml. */
  readonly largestMl: number;
}

/**
 * How much to fetch for a group: the sum of the doses, each to the syringe's mark, and a spare for what is spilled.
 *
 * @param weightsKg - one weight an animal
 * @param spare - share added to the sum, 0.05 for 5 %
 * @param bottleMl - ml in one bottle
 * @throws Problem with the row when a weight is outside 1 to 200 kg; nothing to report without weights
 * @example
 * batchMl([75, 60], { mgPerKg: 20, mgPerMl: 200, markMl: 0.1 }, 0.05, 50) // → { totalMl: 14.175, bottles: 1, largestMl: 7.5 }
 */
export function batchMl(
  weightsKg: readonly number[],
  dosing: Dosing,
  spare: number,
  bottleMl: number | undefined,
): Batch {
  if (weightsKg.length === 0) throw nothingToReport("there are no weights", { argument: "weights_kg" });
  const doseFor = doseMl(dosing, "weights_kg");
  const doses = weightsKg.map((weight, index) => atRow(index, () => doseFor(weight)));
  const sum = doses.reduce((total, dose) => total.plus(dose), new Big(0));
  const total = sum.plus(sum.times(spare));
  return {
    totalMl: total.toNumber(),
    bottles: bottleMl === undefined ? undefined : total.div(bottleMl).round(0, Big.roundUp).toNumber(),
    largestMl: doses.reduce((largest, dose) => Math.max(largest, dose), 0),
  };
}
