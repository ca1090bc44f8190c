import { isoText } from "../../cells/day.ts";
import type { CountColumns } from "../../core/counting/prevalenceChange.ts";
import { sumOf } from "../../core/statistics/sumOf.ts";
import type { FlockGather } from "./comparisonContent.ts";

/** What a flock came to over a year, as what is pooled is to be handed over. */
export interface YearCounts extends CountColumns {
  /** How many gathers these are; "not used" where they do not come to the totals, undefined where none is known. */
  readonly gathers: number | "not used" | undefined;
}

/**
 * The gathers of a year where they are known and come to the totals of the flock; else the totals, which tell nothing of
 * how much the gathers differed.
 *
 * @example
 * countsOfYear([{ day: 46_100, lookedAt: 80, lame: 2 }], 2026, { seen: 90, lame: 2 })
 * // → { seen: [90], lame: [2], gathers: "not used" }
 */
export function countsOfYear(
  gathers: readonly FlockGather[] = [],
  year: number | undefined,
  totals: { readonly seen: number; readonly lame: number },
): YearCounts {
  const those = gathers.filter(({ day, lookedAt }) => lookedAt > 0 && isoText(day).startsWith(`${year}-`));
  const seen = those.map(({ lookedAt }) => lookedAt);
  const lame = those.map((gather) => gather.lame);
  if (those.length > 0 && sumOf(seen) === totals.seen && sumOf(lame) === totals.lame)
    return { seen, lame, gathers: those.length };
  return { seen: [totals.seen], lame: [totals.lame], gathers: those.length === 0 ? undefined : "not used" };
}
