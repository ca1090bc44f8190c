import type { Cell } from "../../cells/cell.ts";
import { isBlankCell, isCellError, showCell } from "../../cells/cell.ts";
import { type Day, firstDay, lastDay, momentFromText, showDay } from "../../cells/day.ts";
import type { Fault } from "../../cells/fault.ts";
import { numberIn } from "../../cells/numberIn.ts";
import { mostMl } from "../treatment/mostMl.ts";
import { cellError, notADate, notANumber, outsideDays, wantedDays } from "../words/faults.ts";
import { findFeet } from "../words/footNames.ts";
import { readLesion } from "../words/readLesion.ts";
import { readTag } from "../words/tagFault.ts";
import { tagReader } from "../words/tagReader.ts";
import { whichLesion } from "../words/whichLesion.ts";
import type { RecordField } from "./recordFields.ts";

/** One cell as read: its value when it has one, and what is wrong with it. A blank cell has neither. */
export interface Reading {
  readonly value?: number | string;
  readonly fault?: Fault;
}

export interface CheckOptions {
  /** Dates after this day are in the future; undefined when it is not known. */
  readonly asOf: Day | undefined;
  /** Added to a date's number to get its 1900-system serial. */
  readonly dayOffset: number;
  /** The row of the sheet in which the first record stands; left out, rows are counted within those given. */
  readonly firstRow?: number;
}

interface FieldCheck {
  readonly check: (cell: Cell, options: CheckOptions) => Reading;
  /** The whole numbers with which nothing is wrong; none where it is left out. */
  readonly sound?: (options: CheckOptions) => SoundNumbers;
}

/** All whole numbers from one to another, as they stand in cells, and what is added to get their value. */
export interface SoundNumbers {
  readonly least: number;
  readonly most: number;
  readonly added: number;
}

const blank: Reading = {};

/**
 * A reader for the cells of one column, by what the column holds. It keeps a memory of words and whole numbers: words have
 * the costly spelling rules, and both come again and again. Others (weights, doses, times of day) may all be different.
 */
export function fieldReader(field: RecordField, options: CheckOptions): (cell: Cell) => Reading {
  const { check } = fieldChecks[field];
  // Some spreadsheets hand over a blank cell as 0; only a score and a withdrawal period can be 0.
  const mayBeZero = field === "score" || field === "withdrawal days";
  const known = new Map<number | string, Reading>();
  return (cell) => {
    if (typeof cell === "number" && !Number.isInteger(cell)) return check(cell, options);
    if (typeof cell === "string" || typeof cell === "number") {
      const before = known.get(cell);
      if (before !== undefined) return before;
      const isBlank = typeof cell === "number" ? cell === 0 && !mayBeZero : isBlankCell(cell);
      const reading = isBlank ? blank : check(cell, options);
      known.set(cell, reading);
      return reading;
    }
    if (isBlankCell(cell)) return blank;
    return isCellError(cell) ? { fault: cellError(cell.error) } : check(cell, options);
  };
}

const noNumbers: SoundNumbers = { least: 1, most: 0, added: 0 };

/**
 * The whole numbers with which nothing is wrong in a column: nearly all its numbers, which can then be told by comparing.
 *
 * @example
 * soundNumbers("score", { asOf: undefined, dayOffset: 0 }) // → { least: 0, most: 6, added: 0 }
 */
export const soundNumbers = (field: RecordField, options: CheckOptions): SoundNumbers =>
  fieldChecks[field].sound?.(options) ?? noNumbers;

const tag: FieldCheck = {
  check(cell) {
    const read = readTag(cell, tagReader());
    return "what" in read ? { fault: read } : { value: read.key };
  },
};

const date = ({ mayBeAhead }: { readonly mayBeAhead: boolean }): FieldCheck => ({
  sound: ({ asOf, dayOffset }) => ({
    least: firstDay - dayOffset,
    most: (mayBeAhead || asOf === undefined ? lastDay : Math.min(lastDay, asOf)) - dayOffset,
    added: dayOffset,
  }),
  check(cell, { asOf, dayOffset }) {
    const typed = typeof cell === "string" ? momentFromText(cell) : undefined;
    const value = typeof cell === "number" ? cell + dayOffset : typed;
    if (value === undefined) return { fault: notADate(cell) };
    // Asked this way round, since NaN, which a fault of the spreadsheet may hand over, is on neither side of a day.
    if (!(value >= firstDay && value < lastDay + 1)) return { fault: outsideDays(cell, value) };
    if (!mayBeAhead && asOf !== undefined && Math.floor(value) > asOf)
      return {
        value,
        fault: { what: `${showDay(value)} is in the future`, mend: "look at day, month and year again" },
      };
    if (typed !== undefined)
      return {
        value,
        fault: { what: `a date kept as text, read as ${showDay(value)}`, mend: "enter it again as a real date" },
      };
    return { value };
  },
});

interface Range {
  readonly least: number;
  readonly most: number;
  readonly unit: string;
  readonly whole?: boolean;
  /** What belongs in the cell, where the functions have words for it. */
  readonly wanted?: string;
}

const number = ({ least, most, unit, whole = false, wanted }: Range): FieldCheck => ({
  sound: () => ({ least: Math.ceil(least), most: Math.floor(most), added: 0 }),
  check(cell) {
    const value = numberIn(cell);
    if (value === undefined) return { fault: notANumber(cell, wanted ?? `${unit} as a number, without a unit`) };
    if (value < least || value > most)
      return {
        fault: { what: `${value} is not from ${least} to ${most}`, mend: `look at it again; it is meant in ${unit}` },
      };
    if (whole && !Number.isInteger(value))
      return { fault: { what: `${value} is not a whole number`, mend: `enter ${unit} as a whole number` } };
    if (typeof cell === "string")
      return { value, fault: { what: `the number ${value} kept as text`, mend: "enter it again as a number" } };
    return { value };
  },
});

const lesion: FieldCheck = { check: lesionIn };

function lesionIn(cell: Cell): Reading {
  const read = readLesion(String(cell));
  if (read === undefined) {
    const { what, mend } = whichLesion(String(cell)) ?? {
      what: "is not a lesion known here",
      mend: "use the usual name of a lesion, such as scald or footrot, or other",
    };
    return { fault: { what: `${showCell(cell)} ${what}`, mend } };
  }
  const value = read.lesion;
  if (read.readAs !== undefined)
    return {
      value,
      fault: { what: `${showCell(cell)} is read as "${read.readAs}", ${value}`, mend: "enter it again if that is it" },
    };
  if (!read.sure)
    return {
      value,
      fault: { what: `${showCell(cell)} is not sure`, mend: "enter the lesion again once it is known" },
    };
  return { value };
}

const foot: FieldCheck = { check: feetIn };

function feetIn(cell: Cell): Reading {
  const value = findFeet(String(cell));
  return value === undefined
    ? {
        fault: {
          what: `${showCell(cell)} is not a foot known here`,
          mend: "use LF, RF, LH, RH, several as LF, RH, or all",
        },
      }
    : { value: value.join(", ") };
}

const anyText: FieldCheck = { check: (cell) => ({ value: String(cell).trim() }) };

// The ranges are common practice, no source: wide enough for any sheep, narrow enough to find a slip of the hand.
const fieldChecks: Readonly<Record<RecordField, FieldCheck>> = {
  tag,
  group: anyText,
  "number treated": number({ least: 1, most: 100_000, unit: "animals", whole: true }),
  "seen lame": date({ mayBeAhead: false }),
  "treatment started": date({ mayBeAhead: false }),
  treated: date({ mayBeAhead: false }),
  "sound on": date({ mayBeAhead: false }),
  "left flock": date({ mayBeAhead: false }),
  "clear date": date({ mayBeAhead: true }),
  recheck: date({ mayBeAhead: true }),
  "looked again": date({ mayBeAhead: false }),
  lesion,
  foot,
  reason: anyText,
  product: anyText,
  batch: anyText,
  score: number({ least: 0, most: 6, unit: "points of the scale", whole: true, wanted: "one whole number, 0 to 6" }),
  weight: number({ least: 1, most: 200, unit: "kg" }),
  dose: number({ least: 0.05, most: mostMl, unit: "ml" }),
  "withdrawal days": number({ least: 0, most: 365, unit: "days", whole: true, wanted: wantedDays }),
};
