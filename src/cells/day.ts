import { UTCDateMini } from "@date-fns/utc/date/mini";
import { addDays } from "date-fns/addDays";
import { isValid } from "date-fns/isValid";
import { lightFormat } from "date-fns/lightFormat";
import { parseISO } from "date-fns/parseISO";
import { msPerDay } from "./msPerDay.ts";

/**
 * A calendar day as spreadsheets count it: whole days, 61 = 1 March 1900, 45351 = 29 February 2024
 * (ECMA-376 Part 1 §18.17.4.1, 1900 system).
 */
export type Day = number;

/** A day with its time as the fraction: 45351.5 = noon on 29 February 2024. */
export type Moment = number;

/** Days between the serials of the 1900 and the 1904 system (ECMA-376 Part 1 §18.17.4.1). */
export const days1904 = 1462;

// All work is done in UTC: in a local zone some dates do not exist (a zone that crossed the date line) or have no midnight.
// The whole UTCDate sets up three formatters of its own, a third of the time in which the functions load in Excel.
const inUtc = { in: (value: number | string | Date) => new UTCDateMini(+new Date(value)) };
const origin = parseISO("1899-12-30", inUtc);

// Month names here, since the library's full formatter brings 10 kB (gzip) of language data to a spreadsheet bundle.
const months = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

const isoDay = /^(\d{4}-\d{2}-\d{2})(?:[T ](\d{2}):(\d{2})(?::(\d{2}))?)?$/;
const shownDay = /^(\d{1,2}) ([A-Z][a-z]{2}) (\d{4})( \d{2}:\d{2})?$/;

/** A day as `showDay` and `showMoment` write it, written with its year first; any other text as it is. */
function yearFirst(text: string): string {
  const [, day = "", month = "", year = "", time = ""] = shownDay.exec(text) ?? [];
  const number = months.indexOf(month) + 1;
  const two = (part: number | string): string => String(part).padStart(2, "0");
  return number === 0 ? text : `${year}-${two(number)}-${two(day)}${time}`;
}

/**
 * Reads `2026-03-14` or `14 Mar 2026`, each optionally with a time (`2026-03-14 10:30`).
 *
 * @returns the serial, or undefined when the text is no such date
 * @example
 * momentFromText("2024-02-29") // → 45351
 * momentFromText("14 Mar 2026") // → 46095
 * momentFromText("2026-02-29") // → undefined
 */
export function momentFromText(text: string): Moment | undefined {
  const match = isoDay.exec(yearFirst(text.trim()));
  if (!match) return undefined;
  const [, date = "", hours = "0", minutes = "0", seconds = "0"] = match;
  const day = parseISO(date, inUtc);
  if (!isValid(day)) return undefined;
  const [h, m, s] = [Number(hours), Number(minutes), Number(seconds)];
  if (h > 23 || m > 59 || s > 59) return undefined;
  // Midnights of UTC are a whole number of days apart. The library's count of days asks for time zones, which takes most of
  // the time in which the examples of all functions are read at every start.
  return (+day - +origin) / msPerDay + (h * 3600 + m * 60 + s) / 86_400;
}

/**
 * The day of a date known to be right, for examples and tables.
 *
 * @throws RangeError when the text is no date
 * @example
 * dayOf("2028-02-29") // → 46812
 */
export function dayOf(text: string): Day {
  const day = momentFromText(text);
  if (day === undefined) throw new RangeError(`${text} is not a date written as 2026-03-14`);
  return day;
}

const dateOf = (day: Day) => addDays(origin, Math.floor(day), inUtc);

/**
 * A day as messages show it; months are written out because 03/04 means two days.
 *
 * @example
 * showDay(46095) // → "14 Mar 2026"
 */
export function showDay(day: Day): string {
  const date = dateOf(day);
  return `${date.getDate()} ${months[date.getMonth()]} ${lightFormat(date, "yyyy")}`;
}

/**
 * A day as a person may type it back.
 *
 * @example
 * isoText(46095) // → "2026-03-14"
 */
export const isoText = (day: Day): string => lightFormat(dateOf(day), "yyyy-MM-dd");

/** The days that are accepted as a date in a flock record: 1990 to 2100. Anything outside is a slip of the hand. */
export const firstDay: Day = dayOf("1990-01-01");
export const lastDay: Day = dayOf("2100-12-31");

/**
 * A day, and its hour when it has one, as messages show it.
 *
 * @example
 * showMoment(46095.4375) // → "14 Mar 2026 10:30"
 */
export function showMoment(moment: Moment): string {
  // Whole minutes first: 23:59:59.9 belongs to the next day once rounded.
  const minutes = Math.round(moment * 1440);
  const hour = Math.floor((minutes % 1440) / 60);
  const day = showDay(Math.floor(minutes / 1440));
  const two = (part: number): string => String(part).padStart(2, "0");
  return minutes % 1440 === 0 ? day : `${day} ${two(hour)}:${two(minutes % 60)}`;
}
