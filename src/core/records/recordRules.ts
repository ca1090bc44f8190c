import { showDay, showMoment } from "../../cells/day.ts";
import type { Fault } from "../../cells/fault.ts";
import { clearDate } from "../dates/clearDate.ts";
import { noDate, noTag, noWithdrawalDays } from "../words/faults.ts";
import { dayIn, type FieldColumn, isFilled } from "./readField.ts";
import type { RecordField } from "./recordFields.ts";

/** A fault that shows only when several cells of a record are held side by side. */
export interface RecordFault extends Fault {
  readonly field: RecordField;
}

/** The columns as read; undefined for one that is not there. */
type Columns = (field: RecordField) => FieldColumn | undefined;

type Check = (row: number) => RecordFault | undefined;

/** The check that a rule makes of each record; undefined where the columns it looks at are not there. */
type Rule = (columns: Columns) => Check | undefined;

/** Whether a cell is filled, in a column that may not be there. */
const filledIn = (column: FieldColumn | undefined): ((row: number) => boolean) =>
  column === undefined ? () => false : (row) => isFilled(column, row);

const hasTag: Rule = (columns) => {
  const tag = columns("tag");
  if (tag === undefined) return undefined;
  const [hasGroup, hasTreated] = [filledIn(columns("group")), filledIn(columns("number treated"))];
  return (row) => {
    // A group that was treated as a whole has its name and its number in place of a tag.
    if (isFilled(tag, row) || hasGroup(row)) return undefined;
    return hasTreated(row)
      ? { field: "tag", what: "a number of animals without their group", mend: "name the group in a column for groups" }
      : { field: "tag", ...noTag };
  };
};

const hasNumber: Rule = (columns) => {
  const [tag, group, treated] = [columns("tag"), columns("group"), columns("number treated")];
  if (tag === undefined || group === undefined || treated === undefined) return undefined;
  return (row) =>
    isFilled(tag, row) || !isFilled(group, row) || isFilled(treated, row)
      ? undefined
      : { field: "number treated", what: "a group was treated, but not how many", mend: "enter the number of animals" };
};

const hasDate: Rule = (columns) => {
  const [treated, seen] = [columns("treated"), columns("seen lame")];
  if (treated === undefined && seen === undefined) return undefined;
  const field = treated === undefined ? "seen lame" : "treated";
  const [isTreated, isSeen] = [filledIn(treated), filledIn(seen)];
  return (row) => (isTreated(row) || isSeen(row) ? undefined : { field, ...noDate });
};

const inOrder =
  (earlier: RecordField, later: RecordField, words: string): Rule =>
  (columns) => {
    const [before, after] = [columns(earlier), columns(later)];
    if (before === undefined || after === undefined) return undefined;
    return (row) => {
      const first = dayIn(before, row);
      const second = dayIn(after, row);
      if (first === undefined || second === undefined || Math.floor(second) >= Math.floor(first)) return undefined;
      return {
        field: later,
        what: `${showDay(second)} is before ${showDay(first)}, when the animal was ${words}`,
        mend: "mend one of the two dates",
      };
    };
  };

// Where medicines are recorded, a row without one is a look at the animal and not a treatment, unless the day it was
// seen lame has a column of its own.
const treatmentFields = (columns: Columns): readonly RecordField[] =>
  (columns("product") || columns("dose")) && !columns("seen lame")
    ? ["product", "dose"]
    : ["product", "dose", "treated"];

const noWithdrawal: Rule = (columns) => {
  const days = columns("withdrawal days");
  if (days === undefined) return undefined;
  const filled = treatmentFields(columns).map((field) => filledIn(columns(field)));
  return (row) =>
    isFilled(days, row) || !filled.some((isIn) => isIn(row))
      ? undefined
      : { field: "withdrawal days", ...noWithdrawalDays };
};

const clearTooEarly: Rule = (columns) => {
  const [treatments, periods, ends] = [columns("treated"), columns("withdrawal days"), columns("clear date")];
  if (treatments === undefined || periods === undefined || ends === undefined) return undefined;
  return (row) => {
    const [treated, days, clear] = [dayIn(treatments, row), dayIn(periods, row), dayIn(ends, row)];
    if (treated === undefined || days === undefined || clear === undefined) return undefined;
    const counted = clearDate(treated, days, Number.isInteger(treated) ? "whole days" : "from the hour");
    if (clear >= counted) return undefined;
    return {
      field: "clear date",
      what: `${showMoment(clear)} is too early: ${days} withdrawal days after ${showMoment(treated)} give ${showMoment(counted)}`,
      mend: "enter the later date, and look the withdrawal days up again",
    };
  };
};

const rules: readonly Rule[] = [
  hasTag,
  hasNumber,
  hasDate,
  inOrder("seen lame", "treated", "seen lame"),
  inOrder("treatment started", "treated", "first treated"),
  inOrder("treated", "sound on", "treated"),
  inOrder("seen lame", "sound on", "seen lame"),
  inOrder("treated", "recheck", "treated"),
  inOrder("treated", "looked again", "treated"),
  inOrder("treated", "left flock", "treated"),
  inOrder("seen lame", "left flock", "seen lame"),
  inOrder("sound on", "left flock", "found sound"),
  noWithdrawal,
  clearTooEarly,
];

const none: readonly RecordFault[] = [];

/**
 * Finds every fault of a record that lies between its cells.
 *
 * @param columns - the columns as read; undefined for one that is not there
 * @returns a check for the record of one row
 */
export function recordRules(columns: Columns): (row: number) => readonly RecordFault[] {
  const checks = rules.flatMap((rule) => rule(columns) ?? []);
  return (row) => {
    let found: RecordFault[] | undefined;
    for (const check of checks) {
      const fault = check(row);
      if (fault === undefined) continue;
      found ??= [];
      found.push(fault);
    }
    return found ?? none;
  };
}
