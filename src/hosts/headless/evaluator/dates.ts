import { type Cell, isCellError } from "../../../cells/cell.ts";
import { isoText, momentFromText } from "../../../cells/day.ts";
import { NotWorkedOut } from "../../../workbook/formula/notWorkedOut.ts";
import type { WorksheetFunction } from "./evaluateFormula.ts";
import { numberOf, textOf } from "./operators.ts";
import { errorOf, lift } from "./values.ts";

const noNumber = errorOf("#NUM!");

/** The last day that a spreadsheet counts, 31 December 9999. */
const lastSerial = 2_958_465;

interface Parts {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

/**
 * The parts of a day in the 1900 system, in which 1900 has a 29 February that never was, and day 0 is 0 January 1900
 * (ECMA-376 part 1, 18.17.4.1).
 */
function partsOf(serial: number): Parts {
  const day = Math.floor(serial);
  if (day === 0) return { year: 1900, month: 1, day: 0 };
  if (day === 60) return { year: 1900, month: 2, day: 29 };
  const [year = 0, month = 0, date = 0] = isoText(day < 60 ? day + 1 : day)
    .split("-")
    .map(Number);
  return { year, month, day: date };
}

const two = (part: number): string => String(part).padStart(2, "0");

/** The day of a month counted from January of a year, with a day past its end put to its end. */
function dayIn(year: number, months: number, day: number): number {
  const [y, m] = [year + Math.floor(months / 12), ((months % 12) + 12) % 12];
  const first = momentFromText(`${String(y).padStart(4, "0")}-${two(m + 1)}-01`) ?? Number.NaN;
  const length =
    [31, (y % 4 === 0 && y % 100 !== 0) || y % 400 === 0 ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][m] ?? 31;
  return first + Math.min(day, length) - 1;
}

const inRange = (serial: number): Cell => (serial >= 0 && serial <= lastSerial ? serial : noNumber);

const ofNumbers =
  (each: (...numbers: number[]) => Cell): WorksheetFunction =>
  (given, calling) =>
    lift(
      given.map((value) => calling.content(value)),
      (...cells) => {
        const error = cells.find(isCellError);
        if (error) return error;
        const numbers = cells.map((cell) => numberOf(cell, calling.toNumber));
        return numbers.includes(undefined) ? errorOf("#VALUE!") : each(...(numbers as number[]));
      },
    );

const ofDay = (part: (parts: Parts) => number): WorksheetFunction =>
  ofNumbers((serial) => (serial >= 0 && serial <= lastSerial + 1 ? part(partsOf(serial)) : noNumber));

/** Seconds of the day, to the nearest whole one. */
const secondsOf = (moment: number): number => Math.round((moment - Math.floor(moment)) * 86_400) % 86_400;
const ofTime = (part: (seconds: number) => number): WorksheetFunction =>
  ofNumbers((moment) => (moment >= 0 ? part(secondsOf(moment)) : noNumber));

function monthsOn(serial: number, months: number, end: boolean): Cell {
  if (!(serial >= 0)) return noNumber;
  const { year, month, day } = partsOf(serial);
  const wanted = dayIn(year, month - 1 + Math.trunc(months), end ? 31 : day);
  return inRange(wanted < 61 ? wanted - 1 : wanted);
}

function dateDifference(from: number, to: number, unit: string): Cell {
  if (from < 0 || to < from) return noNumber;
  const [start, end] = [partsOf(from), partsOf(to)];
  const months = (end.year - start.year) * 12 + end.month - start.month - (end.day < start.day ? 1 : 0);
  switch (unit.toLowerCase()) {
    case "d":
      return Math.floor(to) - Math.floor(from);
    case "m":
      return months;
    case "y":
      return Math.floor(months / 12);
    case "ym":
      return months % 12;
    case "md":
    case "yd":
      throw new NotWorkedOut(`DATEDIF with "${unit}" is answered in different ways by spreadsheets`);
    default:
      return noNumber;
  }
}

/** Functions of days and hours, as the file format counts them. */
export const dateFunctions: ReadonlyMap<string, WorksheetFunction> = new Map<string, WorksheetFunction>([
  ["YEAR", ofDay(({ year }) => year)],
  ["MONTH", ofDay(({ month }) => month)],
  ["DAY", ofDay(({ day }) => day)],
  ["HOUR", ofTime((seconds) => Math.floor(seconds / 3600))],
  ["MINUTE", ofTime((seconds) => Math.floor(seconds / 60) % 60)],
  ["SECOND", ofTime((seconds) => seconds % 60)],
  ["EDATE", ofNumbers((serial, months) => monthsOn(serial, months, false))],
  ["EOMONTH", ofNumbers((serial, months) => monthsOn(serial, months, true))],
  [
    "DATEDIF",
    (given, calling) =>
      lift(
        given.map((value) => calling.content(value)),
        (from = null, to = null, unit = null) => {
          const error = [from, to, unit].find(isCellError);
          if (error) return error;
          const [start, end] = [numberOf(from, calling.toNumber), numberOf(to, calling.toNumber)];
          return start === undefined || end === undefined
            ? errorOf("#VALUE!")
            : dateDifference(start, end, textOf(unit));
        },
      ),
  ],
]);
