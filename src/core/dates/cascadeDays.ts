import { Problem } from "../../cells/problem.ts";

export const produces = ["meat", "milk"] as const;
export type Produce = (typeof produces)[number];

export const regions = ["EU", "GB"] as const;
export type Region = (typeof regions)[number];

/** What the product's own label says, seen from the produce that is asked for. */
export const bases = [
  "authorised",
  "zero period, same family",
  "zero period, another family",
  "not authorised for food animals",
  "not authorised for milk animals",
] as const;
export type Basis = (typeof bases)[number];

export interface OffLabelUse {
  /** The longest period on the label for this produce, in days; undefined where the label has none. */
  readonly labelDays: number | undefined;
  readonly produce: Produce;
  readonly basis: Basis;
  /** The period the vet has set, in days, if one is set. */
  readonly vetDays: number | undefined;
}

/** The least days of one region's law, for each produce. */
interface Minima {
  readonly factor: number;
  readonly notAuthorised: number;
  readonly zeroSameFamily: number;
  readonly zeroAnotherFamily: number;
}

// Regulation (EU) 2019/6, Article 115(1): point (a) meat, point (b) milk. Milk has one day for every zero period;
// meat only where the animal is of another taxonomic family.
const article115: Readonly<Record<Produce, Minima>> = {
  meat: { factor: 1.5, notAuthorised: 28, zeroSameFamily: 0, zeroAnotherFamily: 1 },
  milk: { factor: 1.5, notAuthorised: 7, zeroSameFamily: 1, zeroAnotherFamily: 1 },
};

// Veterinary Medicines Regulations 2013, Schedule 4 paragraph 2(3), as amended from May 2024. Read for milk; for meat
// the factor and the 28 days were read about, and the one day was not found, so the longer European rule is kept.
const schedule4: Readonly<Record<Produce, Minima>> = article115;

const rules: Readonly<Record<Region, Readonly<Record<Produce, Minima>>>> = { EU: article115, GB: schedule4 };

/**
 * The least withdrawal period, in whole days, for a product used off its label.
 *
 * The longest period on the label × 1.5, rounded up; fixed days where the product is not authorised for such animals or
 * its period is zero. A longer period set by the vet stands; a shorter one does not.
 *
 * @throws Problem when the label's days and the basis do not belong together
 * @example
 * cascadeDays({ labelDays: 35, produce: "meat", basis: "authorised", vetDays: undefined }, "EU") // → 53
 * cascadeDays({ labelDays: undefined, produce: "milk", basis: "not authorised for milk animals", vetDays: 10 }, "GB") // → 10
 */
export function cascadeDays(use: OffLabelUse, region: Region): number {
  return Math.max(leastDays(use, rules[region][use.produce]), use.vetDays ?? 0);
}

function leastDays({ labelDays, produce, basis }: OffLabelUse, minima: Minima): number {
  if (basis === "authorised") return Math.ceil(daysOnLabel(labelDays, produce) * minima.factor);
  refuseDaysOnLabel(labelDays, basis);
  if (basis === "zero period, same family") return minima.zeroSameFamily;
  if (basis === "zero period, another family") return minima.zeroAnotherFamily;
  if (basis === "not authorised for milk animals" && produce === "meat")
    throw new Problem(
      'for meat it does not matter whether the product is authorised for milk animals; enter "authorised" or "not authorised for food animals"',
      { argument: "basis" },
    );
  return minima.notAuthorised;
}

function daysOnLabel(labelDays: number | undefined, produce: Produce): number {
  if (labelDays === undefined)
    throw new Problem(
      `it is blank; enter the longest ${produce} period on the label, or say in basis that the product is not authorised`,
      { argument: "label_days" },
    );
  // Some spreadsheets hand over a blank as 0, and a blank must not pass for a zero period.
  if (labelDays === 0)
    throw new Problem(
      'it is 0 or blank; when the label says 0 days, enter "zero period, same family" or "zero period, another family" as the basis',
      { argument: "label_days" },
    );
  return labelDays;
}

function refuseDaysOnLabel(labelDays: number | undefined, basis: Basis): void {
  if (labelDays !== undefined && labelDays !== 0)
    throw new Problem(
      `${labelDays} days do not go with the basis "${basis}"; leave label_days blank, or enter "authorised" as the basis`,
      { argument: "label_days" },
    );
}
