import { nothingToReport, Problem } from "../../cells/problem.ts";
import { normalScore } from "../statistics/normalScore.ts";
import { checkCounts } from "./checkCounts.ts";
import type { ShareWithLimits } from "./truePrevalence.ts";
import { weightedShare } from "./weightedShare.ts";

export interface WeightedPrevalence extends ShareWithLimits {
  /** The usual stratified standard error; undefined when a group not wholly seen had one sheep looked at. */
  readonly standardError: number | undefined;
}

/**
 * The share lame in a flock kept in groups, each weighted by its size and not by how many of it were looked at.
 *
 * The limits are those of weightedShare. The usual "share ± z standard errors" is not used: it gives no width at all
 * when none was lame, and limits below 0 when few were.
 *
 * @param groupSize sheep in each group
 * @param lame lame sheep among those seen of the group
 * @param seen sheep seen of the group
 * @param confidence 0 < confidence < 1
 * @returns shares of the whole flock
 * @throws Problem naming the row: more seen than the group has, or none seen of a group that has sheep; or fewer than
 *   {@link fewestForRange} seen in all, unless the whole flock was
 * @source Cochran 1977, Sampling Techniques, 5.6 and 5.10 (share, standard error); Zou & Donner 2008, Stat Med 27:1693, and Korn & Graubard 1998, Surv Methodol 24:193 (limits)
 * @example
 * weightedPrevalence([120, 60, 220], [6, 1, 4], [40, 30, 50], 0.95).share // → 0.094
 */
export function weightedPrevalence(
  groupSize: readonly number[],
  lame: readonly number[],
  seen: readonly number[],
  confidence: number,
): WeightedPrevalence {
  checkCounts(lame, seen);
  checkGroups(groupSize, seen);
  const flock = groupSize.reduce((sum, size) => sum + size, 0);
  if (flock === 0) throw nothingToReport("the groups hold no sheep, so there is no share", { argument: "group_size" });
  const groups = groupSize.flatMap((size, row) => {
    const n = seen[row] ?? 0;
    // Drawn without putting back, the share varies by √((N − n) / (N − 1)) of what it would from an endless group.
    return n === 0 ? [] : [{ size, lame: lame[row] ?? 0, seen: n, left: n === size ? 0 : (size - n) / (size - 1) }];
  });
  refuseTooFew(groups);
  const limits = weightedShare(
    groups.map((group) => ({ ...group, weight: group.size / flock })),
    normalScore(confidence),
  );
  const variance = groups.reduce((sum, { size, lame: x, seen: n }) => {
    if (n === size) return sum;
    const weight = size / flock;
    return sum + (weight * weight * (1 - n / size) * (x / n) * (1 - x / n)) / (n - 1);
  }, 0);
  return { ...limits, standardError: Number.isNaN(variance) ? undefined : Math.sqrt(variance) };
}

/**
 * The fewest sheep in all from which a share made of groups gets a range: with six, two in each of three groups, the
 * range held the truth in 87 % (docs/methods/benchmarking.md).
 */
export const fewestForRange = 10;

/** A flock that was wholly looked at has no range to be too narrow. */
function refuseTooFew(groups: readonly { readonly seen: number; readonly left: number }[]): void {
  const looked = groups.reduce((sum, { seen }) => sum + seen, 0);
  if (looked >= fewestForRange || groups.every(({ left }) => left === 0)) return;
  throw new Problem(
    `${looked} sheep looked at in all: too few for a range that can be trusted; look at ${fewestForRange} or more`,
    { argument: "seen" },
  );
}

function checkGroups(groupSize: readonly number[], seen: readonly number[]): void {
  if (groupSize.length !== seen.length) {
    throw new Problem(`group_size has ${groupSize.length} rows and seen has ${seen.length}; give both the same rows`, {
      argument: "group_size",
    });
  }
  groupSize.forEach((size, index) => {
    const n = seen[index] ?? 0;
    if (n > size) {
      throw new Problem(`${size} is fewer than the ${n} sheep seen; enter the size of the whole group`, {
        argument: "group_size",
        index,
      });
    }
    if (n === 0 && size > 0) {
      throw new Problem(
        `no sheep of this group of ${size} were seen, so nothing is known of it; look at some or leave the row out`,
        { argument: "seen", index },
      );
    }
  });
}
