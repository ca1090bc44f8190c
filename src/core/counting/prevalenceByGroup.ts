import { nothingToReport, Problem } from "../../cells/problem.ts";
import { sumOf } from "../statistics/sumOf.ts";
import { checkCounts } from "./checkCounts.ts";
import type { LookChoice } from "./countedLooks.ts";
import { prevalenceRange } from "./prevalenceRange.ts";
import { rowsByName } from "./rowsByName.ts";

/** One group's count with its range; share and limits are undefined where no sheep of it was seen. */
export interface GroupPrevalence {
  readonly group: string;
  readonly lame: number;
  readonly seen: number;
  readonly share: number | undefined;
  readonly low: number | undefined;
  readonly high: number | undefined;
}

/** What the line of all groups together is called. */
export const wholeGroup = "all";

/**
 * The share lame in each group, in order of first appearance, then in all of them together, each with Wilson's range from the
 * number of separate looks to which its gathers amount.
 *
 * Names that differ only in capitals or spaces are one group, as they are to a spreadsheet's own COUNTIFS.
 *
 * @param groups name of the group a row
 * @param lame lame sheep a row
 * @param seen sheep seen a row
 * @param choice confidence; whether the spread between gathers counts; the day of each row
 * @throws Problem when a row has more lame than seen, or is itself a total named "all"; #N/A when no sheep were seen
 * @example
 * prevalenceByGroup(["ewes", "rams"], [2, 0], [40, 4], { confidence: 0.95 }).map(({ group, share }) => [group, share])
 * // → [["ewes", 0.05], ["rams", 0], ["all", 0.0454…]]
 */
export function prevalenceByGroup(
  groups: readonly string[],
  lame: readonly number[],
  seen: readonly number[],
  choice: Omit<LookChoice, "flockSize">,
): readonly GroupPrevalence[] {
  checkCounts(lame, seen);
  const named = rowsByName({ argument: "groups", names: groups }, seen.length);
  if (named.some(({ name }) => isTotal.test(name))) refuseTotal(groups);
  if (seen.every((count) => count === 0))
    throw nothingToReport("no sheep were seen, so there is no share", { argument: "seen" });
  const line = (group: string, lame: readonly number[], seen: readonly number[], dates: LookChoice["dates"]) => {
    const counts = { group, lame: sumOf(lame), seen: sumOf(seen) };
    if (counts.seen === 0) return { ...counts, share: undefined, low: undefined, high: undefined };
    return { ...counts, share: counts.lame / counts.seen, ...prevalenceRange(lame, seen, { ...choice, dates }) };
  };
  const { dates } = choice;
  return [
    ...named.map(({ name, rows }) => line(name, inRows(lame, rows), inRows(seen, rows), dates && inRows(dates, rows))),
    line(wholeGroup, lame, seen, dates),
  ];
}

function inRows<T>(column: readonly T[], rows: readonly number[]): readonly T[] {
  const values = new Array<T>(rows.length);
  for (let at = 0; at < rows.length; at++) values[at] = column[rows[at] as number] as T;
  return values;
}

// A total row among the groups would count every sheep twice.
function refuseTotal(groups: readonly string[]): void {
  for (let index = 0; index < groups.length; index++) {
    const fault = totalFault(groups, index);
    if (fault !== undefined) throw fault;
  }
}

// A search, since nearly every name ends it at its first letter, and there is one in each row.
const isTotal = new RegExp(`^\\s*${wholeGroup}\\s*$`, "i");

/** What is wrong with the group of one row: it is named as the total is. */
export function totalFault(groups: readonly string[], index: number): Problem | undefined {
  const group = groups[index] ?? "";
  if (!isTotal.test(group)) return undefined;
  return new Problem(
    `"${group}" is the name of the last row of the answer; leave totals out, or name the group otherwise`,
    { argument: "groups", index },
  );
}
