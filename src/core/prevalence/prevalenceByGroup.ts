import { nothingToReport, Problem } from "../../cells/problem.ts";
import { normalScore } from "../distributions/normalScore.ts";
import { checkCounts } from "./checkCounts.ts";
import { tallyByName } from "./tallyByName.ts";
import { wilsonLimits } from "./wilsonLimits.ts";

/** One group's count with its Wilson interval; share and limits are undefined where no sheep of it was seen. */
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
 * The share lame in each group, in order of first appearance, then in all of them together.
 *
 * Names that differ only in capitals or spaces are one group, as they are to a spreadsheet's own COUNTIFS.
 *
 * @param groups name of the group a row
 * @param lame lame sheep a row
 * @param seen sheep seen a row
 * @param confidence 0 < confidence < 1
 * @throws Problem when a row has more lame than seen, or is itself a total named "all"; #N/A when no sheep were seen
 * @example
 * prevalenceByGroup(["ewes", "rams"], [2, 0], [40, 4], 0.95).map(({ group, share }) => [group, share])
 * // → [["ewes", 0.05], ["rams", 0], ["all", 0.0454…]]
 */
export function prevalenceByGroup(
  groups: readonly string[],
  lame: readonly number[],
  seen: readonly number[],
  confidence: number,
): readonly GroupPrevalence[] {
  checkCounts(lame, seen);
  const tally = tallyByName({ argument: "groups", names: groups }, lame, seen);
  refuseTotal(groups);
  const total = { name: wholeGroup, lame: 0, seen: 0 };
  for (const group of tally) {
    total.lame += group.lame;
    total.seen += group.seen;
  }
  if (total.seen === 0) throw nothingToReport("no sheep were seen, so there is no share", { argument: "seen" });
  const z = normalScore(confidence);
  return [...tally, total].map(({ name, ...count }) => ({ group: name, ...count, ...shareWithLimits(count, z) }));
}

function shareWithLimits({ lame, seen }: { readonly lame: number; readonly seen: number }, z: number) {
  if (seen === 0) return { share: undefined, low: undefined, high: undefined };
  return { share: lame / seen, ...wilsonLimits(lame, seen, z) };
}

// A total row among the groups would count every sheep twice.
function refuseTotal(groups: readonly string[]): void {
  groups.forEach((_, index) => {
    const fault = totalFault(groups, index);
    if (fault !== undefined) throw fault;
  });
}

/** What is wrong with the group of one row: it is named as the total is. */
export function totalFault(groups: readonly string[], index: number): Problem | undefined {
  const group = groups[index] ?? "";
  if (group.trim().toLowerCase() !== wholeGroup) return undefined;
  return new Problem(
    `"${group}" is the name of the last row of the answer; leave totals out, or name the group otherwise`,
    { argument: "groups", index },
  );
}
