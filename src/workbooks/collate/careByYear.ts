import { type Day, isoText } from "../../cells/day.ts";
import { Problem } from "../../cells/problem.ts";
import { cases } from "../../core/animals/cases.ts";
import { soundBy } from "../../core/animals/soundBy.ts";
import { lagFault, treatLag } from "../../core/animals/treatLag.ts";
import { watchedAnimals, watchFault } from "../../core/animals/watchedAnimals.ts";
import type { CategoryShare } from "../../core/counting/categoryMix.ts";
import { lesionMix } from "../../core/counting/lesionMix.ts";
import { endsByDay } from "../../core/statistics/endsByDay.ts";
import { wilsonInterval } from "../../core/statistics/wilsonInterval.ts";
import type { Tag } from "../../core/words/tagKey.ts";
import { type DoneFigure, notCounted } from "./doneFigure.ts";

const confidence = 0.95;
/** Prompt is within 3 days (read); a treated sheep is looked at for two weeks, as the foot book does. */
export const careDays = { treated: 3, sound: 14 } as const;

/** A day as it stands in a cell; "unread" where something stands there that is no day. */
export type WrittenDay = Day | "unread" | undefined;

/** A row of Cases of one animal. */
export interface CaseRow {
  readonly tag: Tag;
  /** The day she was seen lame, or else treated. */
  readonly day: Day;
  readonly seen: WrittenDay;
  readonly treated: WrittenDay;
  readonly soundOn: WrittenDay;
  readonly leftOn: WrittenDay;
  readonly lesion: string | undefined;
}

/** What was done about the cases that began in one year. */
export interface CareYear {
  readonly inTime: DoneFigure;
  readonly sound: DoneFigure;
  readonly lesions: readonly CategoryShare[];
  readonly withoutLesion: number;
}

interface OneCase {
  readonly first: Day;
  readonly last: Day;
  readonly rows: CaseRow[];
}

/**
 * What was done about the cases of each year. A case belongs to the year in which it began.
 *
 * @param asOf the day up to which the book is complete; undefined where it does not say
 */
export function careByYear(
  rows: readonly CaseRow[],
  gapDays: number,
  asOf: Day | undefined,
): ReadonlyMap<number, CareYear> {
  const byAnimal = new Map<string, OneCase[]>();
  const byYear = new Map<number, OneCase[]>();
  const found = cases(
    rows.map(({ tag }) => tag),
    rows.map(({ day }) => day),
    gapDays,
  );
  for (const { tag, first, last } of found) {
    const one: OneCase = { first, last, rows: [] };
    append(byAnimal, tag.key, one);
    append(byYear, Number(isoText(first).slice(0, 4)), one);
  }
  for (const row of rows)
    byAnimal
      .get(row.tag.key)
      ?.find(({ first, last }) => first <= row.day && row.day <= last)
      ?.rows.push(row);
  return new Map(
    [...byYear].map(([year, ofYear]) => {
      const lesions = ofYear.flatMap(({ rows: own }) => own.find(({ lesion }) => lesion !== undefined)?.lesion ?? []);
      const care: CareYear = {
        inTime: inTimeOf(ofYear, asOf),
        sound: soundOf(ofYear, asOf),
        lesions: lesions.length === 0 ? [] : lesionMix(lesions, confidence),
        withoutLesion: ofYear.length - lesions.length,
      };
      return [year, care];
    }),
  );
}

function append<K, T>(lists: Map<K, T[]>, key: K, item: T): void {
  const list = lists.get(key);
  if (list) list.push(item);
  else lists.set(key, [item]);
}

const isDay = (day: WrittenDay): day is Day => typeof day === "number";
const earliest = (days: readonly WrittenDay[]): Day | undefined => {
  const known = days.filter(isDay);
  return known.length === 0 ? undefined : known.reduce((first, day) => Math.min(first, day));
};
/** Why nothing that hangs on the end of a book can be counted. */
export const noDay = "the book does not say up to which day it is complete (As of, in its settings)";

function inTimeOf(ofYear: readonly OneCase[], asOf: Day | undefined): DoneFigure {
  if (asOf === undefined) return notCounted(noDay);
  const seen: Day[] = [];
  const treated: (Day | undefined)[] = [];
  for (const { rows } of ofYear) {
    const [first, given] = [earliest(rows.map((row) => row.seen)), earliest(rows.map((row) => row.treated))];
    // Of a case without the day it was seen the wait is not known, and never 0.
    if (first === undefined || rows.some((row) => row.seen === "unread" || row.treated === "unread")) continue;
    if (lagFault(0, first, given, asOf) !== undefined) continue;
    seen.push(first);
    treated.push(given);
  }
  const leftOut = ofYear.length - seen.length;
  if (seen.length === 0) return notCounted("no case has the days that it needs", leftOut);
  // A farm that writes down no treatment at all may still treat: that is no share of 0.
  if (treated.every((day) => day === undefined))
    return notCounted("no treatment has a day, so there may be none, or none written down", leftOut);
  const decided = seen.filter((day) => asOf - day > careDays.treated).length;
  const { inTime } = treatLag(seen, treated, careDays.treated, asOf);
  if (inTime === undefined) return notCounted(`no case was seen more than ${careDays.treated} days before`, leftOut);
  const range = wilsonInterval(Math.round(inTime * decided), decided, confidence);
  return { value: inTime, ...range, of: decided, leftOut, words: `of ${decided} cases` };
}

function soundOf(ofYear: readonly OneCase[], asOf: Day | undefined): DoneFigure {
  if (asOf === undefined) return notCounted(noDay);
  const treated: Day[] = [];
  const soundOn: (Day | undefined)[] = [];
  const leftOn: (Day | undefined)[] = [];
  let leftOut = 0;
  for (const { rows } of ofYear) {
    const days = rows.flatMap((row) => [row.treated, row.soundOn, row.leftOn]);
    const start = earliest(rows.map((row) => row.treated));
    if (days.includes("unread")) leftOut++;
    if (start === undefined || days.includes("unread")) continue;
    const [sound, left] = [earliest(rows.map((row) => row.soundOn)), earliest(rows.map((row) => row.leftOn))];
    if (watchFault({ treated: [start], soundOn: [sound], leftOn: [left], asOf }, 0) !== undefined) {
      leftOut++;
      continue;
    }
    treated.push(start);
    soundOn.push(sound);
    leftOn.push(left);
  }
  if (treated.length === 0) return notCounted("no treated case has the days that it needs", leftOut);
  // The same of one that never looks again, or does not say so.
  if (soundOn.every((day) => day === undefined))
    return notCounted("no animal is written down as sound, so there may be none, or nobody wrote it down", leftOut);
  try {
    const ends = endsByDay(watchedAnimals({ treated, soundOn, leftOn, asOf }));
    const { share: value, low, high } = soundBy(ends, careDays.sound, confidence);
    return { value, low, high, of: treated.length, leftOut, words: `of ${treated.length} treated cases` };
  } catch (error) {
    if (error instanceof Problem) return notCounted(error.message, leftOut);
    throw error;
  }
}
