import { showDay, showMoment } from "../../cells/day.ts";
import type { Fault } from "../../cells/fault.ts";
import { clearDate } from "../dates/clearDate.ts";
import { noDate, noTag, noWithdrawalDays } from "../words/faults.ts";
import type { RecordField } from "./recordFields.ts";

/** One record as read: the values its cells hold. */
export interface RecordValues {
  /** Whether the cell is filled, even with something that cannot be read. */
  readonly filled: (field: RecordField) => boolean;
  readonly day: (field: RecordField) => number | undefined;
}

/** A fault that shows only when several cells of a record are held side by side. */
export interface RecordFault extends Fault {
  readonly field: RecordField;
}

/** Which columns there are. */
type Columns = (field: RecordField) => boolean;

type Check = (record: RecordValues) => RecordFault | undefined;

/** The check that a rule makes of each record; undefined where the columns it looks at are not there. */
type Rule = (has: Columns) => Check | undefined;

const hasTag: Rule = (has) => {
  if (!has("tag")) return undefined;
  return (record) => {
    // A group that was treated as a whole has its name and its number in place of a tag.
    if (record.filled("tag") || record.filled("group")) return undefined;
    return record.filled("number treated")
      ? { field: "tag", what: "a number of animals without their group", mend: "name the group in a column for groups" }
      : { field: "tag", ...noTag };
  };
};

const hasNumber: Rule = (has) => {
  if (!has("tag") || !has("group") || !has("number treated")) return undefined;
  return (record) =>
    record.filled("tag") || !record.filled("group") || record.filled("number treated")
      ? undefined
      : { field: "number treated", what: "a group was treated, but not how many", mend: "enter the number of animals" };
};

const hasDate: Rule = (has) => {
  const field = has("treated") ? "treated" : "seen lame";
  if (!has(field)) return undefined;
  return (record) => (record.filled("treated") || record.filled("seen lame") ? undefined : { field, ...noDate });
};

const inOrder =
  (earlier: RecordField, later: RecordField, words: string): Rule =>
  (has) => {
    if (!has(earlier) || !has(later)) return undefined;
    return (record) => {
      const first = record.day(earlier);
      const second = record.day(later);
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
const treatmentFields = (has: Columns): readonly RecordField[] =>
  (has("product") || has("dose")) && !has("seen lame") ? ["product", "dose"] : ["product", "dose", "treated"];

const noWithdrawal: Rule = (has) => {
  if (!has("withdrawal days")) return undefined;
  const fields = treatmentFields(has);
  return (record) =>
    record.filled("withdrawal days") || !fields.some(record.filled)
      ? undefined
      : { field: "withdrawal days", ...noWithdrawalDays };
};

const clearTooEarly: Rule = (has) => {
  if (!has("treated") || !has("withdrawal days") || !has("clear date")) return undefined;
  return (record) => {
    const [treated, days, clear] = [record.day("treated"), record.day("withdrawal days"), record.day("clear date")];
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
 * @param has - whether there is a column for a field
 * @returns a check for one record
 */
export function recordRules(has: Columns): (record: RecordValues) => readonly RecordFault[] {
  const checks = rules.flatMap((rule) => rule(has) ?? []);
  return (record) => {
    let found: RecordFault[] | undefined;
    for (const check of checks) {
      const fault = check(record);
      if (fault === undefined) continue;
      found ??= [];
      found.push(fault);
    }
    return found ?? none;
  };
}
