import { showDay } from "../../cells/day.ts";
import type { CategoryShare } from "../../core/counting/categoryMix.ts";
import { mgPerPcu } from "../../core/medicines/mgPerPcu.ts";
import { newCaseRate } from "../../core/watching/newCaseRate.ts";
import { noDay } from "./careByYear.ts";
import { daysCovered } from "./daysCovered.ts";
import { type DoneFigure, notCounted, several } from "./doneFigure.ts";
import { type FlockRecord, isUnwritten } from "./flockRecord.ts";

const confidence = 0.95;
/** New cases are counted for so many sheep in a year. */
export const perSheep = 100;

/** What was done about lameness in one year of a flock, and how much of it there was. */
export interface FlockDone {
  readonly newCases: DoneFigure;
  readonly inTime: DoneFigure;
  readonly sound: DoneFigure;
  /** Most frequent first. */
  readonly lesions: readonly CategoryShare[];
  /** Cases without a lesion written down. */
  readonly withoutLesion: number;
  readonly mgPcu: DoneFigure;
  /** Rows of Cases without a tag or a day that can be read, which are in none of these. */
  readonly inNoCase: number;
}

/**
 * What was done in one year, each figure with the reason where it cannot be counted.
 *
 * @example
 * flockDone(record, 2026).mgPcu.words // → "12 treatments without a day"
 */
export function flockDone(record: FlockRecord, year: number): FlockDone {
  const care = record.care.get(year);
  return {
    newCases: newCasesOf(record, year),
    inTime: care?.inTime ?? notCounted("no case is recorded in the year"),
    sound: care?.sound ?? notCounted("no case is recorded in the year"),
    lesions: care?.lesions ?? [],
    withoutLesion: care?.withoutLesion ?? 0,
    mgPcu: mgPcuOf(record, year),
    inNoCase: record.inNoCase,
  };
}

function newCasesOf({ years, breedingSheep, asOf, earliest }: FlockRecord, year: number): DoneFigure {
  const begun = years.get(year)?.cases ?? 0;
  if (begun === 0) return notCounted("no case is recorded in the year, which may be none or not written down");
  const fault =
    headFault("breeding sheep", breedingSheep) ??
    (breedingSheep === 0 ? "no breeding sheep in the settings" : undefined);
  if (fault !== undefined || breedingSheep === undefined) return notCounted(fault ?? "");
  if (asOf === undefined) return notCounted(noDay);
  const { days, from, isBegunInYear, yearLength } = daysCovered(year, earliest, asOf);
  if (days === 0) return notCounted("the book ends before the year");
  const { rate, low, high } = newCaseRate(begun, breedingSheep * days, confidence, perSheep * yearLength);
  const since = isBegunInYear ? ` from the book's first record on ${showDay(from)}` : "";
  const words = `${several(begun, "case")} of all animals in ${days} days${since}, for ${breedingSheep} breeding sheep`;
  return { value: rate, low, high, of: begun, words, leftOut: 0 };
}

function headFault(what: string, heads: number | undefined): string | undefined {
  if (heads === undefined) return `${what} are missing in the settings`;
  return Number.isInteger(heads) && heads >= 0 ? undefined : `${what} in the settings are no whole number`;
}

function mgPcuOf(record: FlockRecord, year: number): DoneFigure {
  const { breedingSheep, slaughterLambs, coursesWithoutDay, years } = record;
  const { coursesWithoutMg = 0, antibioticMg } = years.get(year) ?? {};
  const reasons = [
    isUnwritten(years.get(year)) && "no case is recorded in the year, which may be none or not written down",
    // One of them may be of this year.
    coursesWithoutDay > 0 && `${several(coursesWithoutDay, "treatment")} without a day`,
    coursesWithoutMg > 0 &&
      `${several(coursesWithoutMg, "treatment")} without ml, or with a medicine without mg per ml`,
    headFault("breeding sheep", breedingSheep),
    headFault("lambs sold", slaughterLambs),
    breedingSheep === 0 && slaughterLambs === 0 && "no breeding sheep and no lambs sold in the settings",
  ].filter((reason) => typeof reason === "string");
  if (reasons.length > 0) return notCounted(reasons.join("; "));
  if (antibioticMg === undefined || breedingSheep === undefined || slaughterLambs === undefined)
    return notCounted("no records of the year");
  const value = mgPerPcu(antibioticMg, breedingSheep, slaughterLambs);
  return { ...notCounted(""), value };
}
