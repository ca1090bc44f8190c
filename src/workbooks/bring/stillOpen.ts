import { type Cell, isBlankCell } from "../../cells/cell.ts";
import type { Day } from "../../cells/day.ts";
import { Problem } from "../../cells/problem.ts";
import { clearDate } from "../../core/dates/clearDate.ts";
import { tagKey } from "../../core/words/tagKey.ts";
import type { cases } from "../tables/cases.ts";
import type { RecordOf } from "../tables/defineTable.ts";

type Case = RecordOf<typeof cases>;

/**
 * Which cases go into a book that begins on a day: those from that day on, and all of each animal that is still in
 * withdrawal, not recorded sound, or due to be looked at. What cannot be read is open.
 *
 * @param from - the first day of the new book
 * @returns for each case whether it goes in
 */
export function stillOpen(records: readonly Case[], from: Day): readonly boolean[] {
  const open = records.map((record) => isOpen(record, from));
  const animals = new Set(records.flatMap((record, index) => (open[index] ? (keyOf(record) ?? []) : [])));
  return records.map((record, index) => open[index] || animals.has(keyOf(record) ?? ""));
}

function isOpen(record: Case, from: Day): boolean {
  const day = isBlank(record.seen) ? record.treated : record.seen;
  const days = [day, record.treated].filter((cell) => !isBlank(cell));
  if (days.length === 0 || days.some((cell) => typeof cell !== "number" || cell >= from)) return true;
  if (isBefore(record.leftFlock, from)) return false;
  if (mayBeInWithdrawal(record, from)) return true;
  // A group that was treated as a whole is not lame as a whole.
  const isGroup = isBlank(record.tag) && !isBlank(record.group) && !isBlank(record.animals);
  return !isGroup && !isBefore(record.soundOn, from);
}

function mayBeInWithdrawal({ treated, medicine, ml, withdrawalDays }: Case, from: Day): boolean {
  if ([treated, medicine, ml, withdrawalDays].every(isBlank)) return false;
  if (typeof treated !== "number" || typeof withdrawalDays !== "number" || !isWhole(withdrawalDays)) return true;
  return clearDate(treated, withdrawalDays, "whole days") > from;
}

const isWhole = (days: number): boolean => Number.isInteger(days) && days >= 0 && days <= 365;

const isBlank = (cell: Cell | undefined): boolean => isBlankCell(cell);

/** What was settled by then; anything but a real day settles nothing. */
const isBefore = (cell: Cell | undefined, from: Day): boolean => typeof cell === "number" && cell < from;

function keyOf({ tag }: Case): string | undefined {
  if (typeof tag !== "string" && typeof tag !== "number") return undefined;
  try {
    return tagKey(tag);
  } catch (error) {
    if (error instanceof Problem) return undefined;
    throw error;
  }
}
