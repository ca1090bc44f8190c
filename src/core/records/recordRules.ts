import { showDay, showMoment } from "../../cells/day.ts";
import { clearDate } from "../withdrawal/clearDate.ts";
import type { Fault } from "./fieldChecks.ts";
import type { RecordField } from "./recordFields.ts";

/** One record as read: the values its cells hold, and which columns there are. */
export interface RecordValues {
  readonly has: (field: RecordField) => boolean;
  /** Whether the cell is filled, even with something that cannot be read. */
  readonly filled: (field: RecordField) => boolean;
  readonly day: (field: RecordField) => number | undefined;
}

/** A fault that shows only when several cells of a record are held side by side. */
export interface RecordFault extends Fault {
  readonly field: RecordField;
}

type Rule = (record: RecordValues) => RecordFault | undefined;

const noTag: Rule = (record) =>
  record.has("tag") && !record.filled("tag")
    ? { field: "tag", what: "no tag in a row that holds a record", mend: "enter the tag of the animal" }
    : undefined;

const noDate: Rule = (record) => {
  const field = record.has("treated") ? "treated" : "seen lame";
  return record.has(field) && !record.filled("treated") && !record.filled("seen lame")
    ? { field, what: "no date in a row that holds a record", mend: "enter the date" }
    : undefined;
};

const inOrder =
  (earlier: RecordField, later: RecordField, words: string): Rule =>
  (record) => {
    const [first, second] = [record.day(earlier), record.day(later)];
    if (first === undefined || second === undefined || Math.floor(second) >= Math.floor(first)) return undefined;
    return {
      field: later,
      what: `${showDay(second)} is before ${showDay(first)}, when the animal was ${words}`,
      mend: "mend one of the two dates",
    };
  };

// Where medicines are recorded, a row without one is a look at the animal and not a treatment.
const isTreatment = (record: RecordValues): boolean =>
  record.has("product") || record.has("dose")
    ? record.filled("product") || record.filled("dose")
    : record.filled("treated");

const noWithdrawal: Rule = (record) =>
  record.has("withdrawal days") && !record.filled("withdrawal days") && isTreatment(record)
    ? {
        field: "withdrawal days",
        what: "a treatment without withdrawal days",
        mend: "enter the days from the data sheet or the vet; 0 only when that is what is written there",
      }
    : undefined;

const clearTooEarly: Rule = (record) => {
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

const rules: readonly Rule[] = [
  noTag,
  noDate,
  inOrder("seen lame", "treated", "seen lame"),
  inOrder("treated", "sound on", "treated"),
  inOrder("seen lame", "sound on", "seen lame"),
  inOrder("treated", "recheck", "treated"),
  noWithdrawal,
  clearTooEarly,
];

/** Every fault of a record that lies between its cells. */
export function recordRules(record: RecordValues): readonly RecordFault[] {
  return rules.flatMap((rule) => rule(record) ?? []);
}
