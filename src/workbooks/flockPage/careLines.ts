import { careDays } from "../collate/careByYear.ts";
import { type DoneFigure, several } from "../collate/doneFigure.ts";
import { type FlockDone, perSheep } from "../collate/flockDone.ts";
import type { Look } from "../writing/looks.ts";
import type { PageLine } from "./flockPageContent.ts";

/** Lesions with a line of their own. */
const mostLesions = 4;

/** What was done about lameness in one year of a flock, and how much of it there was. */
export function careLines(done: FlockDone): readonly PageLine[] {
  const doubted =
    done.inNoCase === 0
      ? []
      : [
          missing(
            "Left out of these",
            `${several(done.inNoCase, "row")} of Cases without a tag or a day that can be read`,
          ),
        ];
  return [
    lineOf(`New cases, ${perSheep} sheep a year`, done.newCases, "besideRate"),
    lineOf(`Treated within ${careDays.treated} days`, done.inTime, "besidePercent"),
    lineOf(`Sound within ${careDays.sound} days`, done.sound, "besidePercent"),
    ...lesionLines(done),
    ...doubted,
  ];
}

const missing = (label: string, words: string): PageLine => ({
  label,
  value: undefined,
  look: "besidePercent",
  words,
});

function lineOf(label: string, { value, low, high, words, leftOut }: DoneFigure, look: Look): PageLine {
  const without = `${leftOut} left out, of which a day is missing, cannot be read or cannot be right`;
  const whole = leftOut === 0 ? words : `${words}; ${without}`;
  return value === undefined
    ? missing(label, `not counted: ${whole}`)
    : { label, value, low, high, look, words: whole };
}

function lesionLines({ lesions, withoutLesion }: FlockDone): readonly PageLine[] {
  if (lesions.length === 0) return [missing("Lesions", "not counted: no lesion is recorded in the year")];
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
