import pow from "@stdlib/math-base-special-pow";
import { nothingToReport, Problem } from "../../cells/problem.ts";
import { normalScore } from "../distributions/normalScore.ts";
import { checkCounts } from "./checkCounts.ts";
import type { ShareWithLimits } from "./truePrevalence.ts";
import { wilsonLimits } from "./wilsonLimits.ts";

export interface WeightedPrevalence extends ShareWithLimits {
  /** The usual stratified standard error; undefined when a group not wholly seen had one sheep looked at. */
  readonly standardError: number | undefined;
}

/**
 * The share lame in a flock kept in groups, each weighted by its size and not by how many of it were looked at.
 *
 * The limits put together the groups' own Wilson intervals (each narrowed by the part of the group that was seen), as
 * Newcombe does for two shares. The usual "share ± z standard errors" is not used: it gives no width at all when none
 * was lame, and limits below 0 when few were. How often either holds the truth is worked out
 * exactly in docs/methods/counting.md.
 *
 * @param groupSize sheep in each group
 * @param lame lame sheep among those seen of the group
 * @param seen sheep seen of the group
 * @param confidence 0 < confidence < 1
 * @returns shares of the whole flock
 * @throws Problem naming the row: more seen than the group has, or none seen of a group that has sheep
 * @source Cochran 1977, Sampling Techniques, 5.6 and 5.10 (share, standard error); Zou & Donner 2008, Stat Med 27:1693 (limits)
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
  const z = normalScore(confidence);
  let [share, below, above, variance] = [0, 0, 0, 0];
  groupSize.forEach((size, row) => {
    const n = seen[row] ?? 0;
    if (n === 0) return;
    const group = groupShare(size, lame[row] ?? 0, n, z);
    const weight = size / flock;
    share += weight * group.share;
    below += pow(weight * (group.share - group.low), 2);
    above += pow(weight * (group.high - group.share), 2);
    variance += weight * weight * group.variance;
  });
  return {
    share,
    low: Math.max(share - Math.sqrt(below), 0),
    high: Math.min(share + Math.sqrt(above), 1),
    standardError: Number.isNaN(variance) ? undefined : Math.sqrt(variance),
  };
}

function groupShare(size: number, x: number, n: number, z: number) {
  const share = x / n;
  if (n === size) return { share, low: share, high: share, variance: 0 };
  // Drawn without putting back, the share varies by √((N − n) / (N − 1)) of what it would from an endless group.
  const limits = wilsonLimits(x, n, z * Math.sqrt((size - n) / (size - 1)));
  return { share, ...limits, variance: ((1 - n / size) * share * (1 - share)) / (n - 1) };
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
