import { nothingToReport, Problem } from "../../cells/problem.ts";
import { sumOf } from "../statistics/sumOf.ts";
import { checkCounts } from "./checkCounts.ts";
import type { LookChoice } from "./countedLooks.ts";
import { effectiveIn } from "./effectiveSeen.ts";
import { type GatherSpread, gatherSpread } from "./gatherSpread.ts";
import { gathersByPlace } from "./gathersByPlace.ts";
import { gathersOf } from "./gathersOf.ts";
import { placesByName } from "./placesByName.ts";
import { rangeOfLooks } from "./prevalenceRange.ts";
import { spreadsByPlace } from "./spreadsByPlace.ts";

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
  lame: ArrayLike<number>,
  seen: ArrayLike<number>,
  choice: Omit<LookChoice, "flockSize">,
): readonly GroupPrevalence[] {
  checkCounts(lame, seen);
  const { names, placeOf } = placesByName({ argument: "groups", names: groups }, seen.length);
  if (names.some((name) => isTotal.test(name))) refuseTotal(groups);
  if (sumOf(seen) === 0) throw nothingToReport("no sheep were seen, so there is no share", { argument: "seen" });
  const line = (group: string, spread: GatherSpread): GroupPrevalence => {
    const counts = { group, lame: spread.lame, seen: spread.seen };
    if (counts.seen === 0) return { ...counts, share: undefined, low: undefined, high: undefined };
    const effective = choice.spread === "chance" ? spread.seen : effectiveIn(spread, choice.confidence);
    const share = counts.lame / counts.seen;
    return { ...counts, share, ...rangeOfLooks({ ...counts, share, effective }, choice) };
  };
  const spreads = spreadsByPlace(gathersByPlace({ placeOf, lame, seen }, choice.dates), names.length);
  return [
    ...names.map((name, place) => line(name, spreads[place] as GatherSpread)),
    line(wholeGroup, gatherSpread(gathersOf(lame, seen, choice.dates))),
  ];
}

// A total row among the groups would count every sheep twice.
function refuseTotal(groups: readonly string[]): void {
  for (let index = 0; index < groups.length; index++) {
    const fault = totalFault(groups, index);
    if (fault !== undefined) throw fault;
  }
}

const isTotal = new RegExp(`^\\s*${wholeGroup}\\s*$`, "i");

/** Whether the first letter of a name leaves it open that it is the total's: it does of few, and there is one in each row. */
function mayBeTotal(name: string): boolean {
  const first = name.charCodeAt(0);
  const isPlain = first > space && first <= lastAscii;
  return !isPlain || (first | capitalBit) === wholeGroup.charCodeAt(0);
}

const space = 0x20;
const lastAscii = 0x7f;
// What a small letter has in its code and its capital lacks.
const capitalBit = 0x20;

/** What is wrong with the group of one row: it is named as the total is. */
export function totalFault(groups: readonly string[], index: number): Problem | undefined {
  const group = groups[index] ?? "";
  if (!mayBeTotal(group) || !isTotal.test(group)) return undefined;
  return new Problem(
    `"${group}" is the name of the last row of the answer; leave totals out, or name the group otherwise`,
    { argument: "groups", index },
  );
}
