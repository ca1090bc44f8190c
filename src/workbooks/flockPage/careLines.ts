import { showDay } from "../../cells/day.ts";
import { newCaseRate } from "../../core/watching/newCaseRate.ts";
import { type CareShare, type CareYear, careDays } from "../collate/careByYear.ts";
import { daysCovered } from "../collate/daysCovered.ts";
import type { FlockRecord } from "../collate/flockRecord.ts";
import type { PageLine } from "./flockPageContent.ts";

const confidence = 0.95;
const perSheep = 100;
/** Lesions with a line of their own. */
const mostLesions = 4;

/** What was done about lameness in one year of a flock, and how much of it there was. */
export function careLines(record: FlockRecord, year: number): readonly PageLine[] {
  const care = record.care.get(year);
  const doubted =
    record.inNoCase === 0
      ? []
      : [
          missing(
            "Left out of these",
            `${several(record.inNoCase, "row")} of Cases without a tag or a day that can be read`,
          ),
        ];
  return [
    newCases(record, year),
    shareLine(`Treated within ${careDays.treated} days`, care?.inTime, "cases"),
    shareLine(`Sound within ${careDays.sound} days`, care?.sound, "treated cases"),
    ...lesionLines(care),
    ...doubted,
  ];
}

const missing = (label: string, words: string): PageLine => ({
  label,
  value: undefined,
  look: "besidePercent",
  words,
});

const several = (count: number, what: string): string => `${count} ${count === 1 ? what : `${what}s`}`;

function newCases({ years, breedingSheep, asOf, earliest }: FlockRecord, year: number): PageLine {
  const label = `New cases, ${perSheep} sheep a year`;
  const none = (why: string): PageLine => missing(label, `not counted: ${why}`);
  const begun = years.get(year)?.cases ?? 0;
  if (begun === 0) return none("no case is recorded in the year, which may be none or not written down");
  if (!breedingSheep) return none("breeding sheep are missing in the settings");
  if (asOf === undefined) return none("the book does not say up to which day it is complete");
  const { days, from, isBegunInYear, yearLength } = daysCovered(year, earliest, asOf);
  if (days === 0) return none("the book ends before the year");
  const { rate, low, high } = newCaseRate(begun, breedingSheep * days, confidence, perSheep * yearLength);
  const since = isBegunInYear ? ` from the book's first record on ${showDay(from)}` : "";
  return {
    label,
    value: rate,
    low,
    high,
    look: "besideRate",
    words: `${several(begun, "case")} of all animals in ${days} days${since}, for ${breedingSheep} breeding sheep`,
  };
}

function shareLine(label: string, found: CareShare | undefined, of: string): PageLine {
  if (found === undefined) return missing(label, "not counted: no case is recorded in the year");
  const { share, low, high, leftOut, reason } = found;
  const without =
    leftOut === 0 ? "" : `; ${leftOut} left out, of which a day is missing, cannot be read or cannot be right`;
  if (share === undefined) return missing(label, `not counted: ${reason}${without}`);
  return { label, value: share, low, high, look: "besidePercent", words: `of ${found.of} ${of}${without}` };
}

function lesionLines(care: CareYear | undefined): readonly PageLine[] {
  if (care === undefined || care.lesions.length === 0)
    return [missing("Lesions", "not counted: no lesion is recorded in the year")];
  const { lesions, withoutLesion } = care;
  const all = lesions.reduce((sum, { cases }) => sum + cases, 0);
  const rest = lesions.slice(mostLesions);
  const others = rest.reduce((sum, { cases }) => sum + cases, 0);
  const more = [
    ...(rest.length > 0 ? [`${several(others, "case")} of other lesions`] : []),
    ...(withoutLesion > 0 ? [`${several(withoutLesion, "case")} without a lesion written down`] : []),
  ];
  return [
    ...lesions.slice(0, mostLesions).map(
      ({ name, cases, share, low, high }): PageLine => ({
        label: `Of ${name}`,
        value: share,
        low,
        high,
        look: "besidePercent",
        words: `${cases} of ${all} cases with a lesion written down`,
      }),
    ),
    ...(more.length > 0 ? [missing("Lesions besides", more.join("; "))] : []),
  ];
}
