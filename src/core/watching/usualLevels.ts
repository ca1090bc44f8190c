import { isoText } from "../../cells/day.ts";
import type { Gather } from "./gathersByDay.ts";

/** What is usual at a gather: all gathers of the baseline together, or those of the same month in other years. */
export const levelWords = ["all", "month"] as const;
export type LevelWord = (typeof levelWords)[number];

/** The gathers that a usual level was counted from. */
export interface UsualLevel {
  readonly share: number;
  readonly seen: number;
  /** Σ n² of those gathers. */
  readonly squares: number;
}

/**
 * The usual level for each gather.
 *
 * @param gathers in order of time
 * @param baseline those that make the level
 * @param level which of them count for a gather
 * @returns a level for each gather; undefined where no gather of the baseline lies in that month of another year
 * @example
 * usualLevels([{ date: 46082, lame: 9, seen: 90 }], [{ date: 45717, lame: 2, seen: 50 }], "month")
 * // → [{ share: 0.04, seen: 50, squares: 2500 }]
 */
export function usualLevels(
  gathers: readonly Gather[],
  baseline: readonly Gather[],
  level: LevelWord,
): readonly (UsualLevel | undefined)[] {
  if (level === "all") {
    const all = shared(baseline);
    return gathers.map(() => all);
  }
  const byMonth = new Map<string, { readonly year: string; readonly gather: Gather }[]>();
  for (const gather of baseline) {
    const { year, month } = monthOf(gather);
    const others = byMonth.get(month) ?? [];
    others.push({ year, gather });
    byMonth.set(month, others);
  }
  const known = new Map<string, UsualLevel | undefined>();
  return gathers.map((own) => {
    const { year, month } = monthOf(own);
    const key = `${year}-${month}`;
    if (!known.has(key)) {
      const others = (byMonth.get(month) ?? []).filter((other) => other.year !== year);
      known.set(key, others.length === 0 ? undefined : shared(others.map(({ gather }) => gather)));
    }
    return known.get(key);
  });
}

function monthOf({ date }: Gather) {
  const [year = "", month = ""] = isoText(date).split("-");
  return { year, month };
}

function shared(gathers: readonly Gather[]): UsualLevel {
  let [lame, seen, squares] = [0, 0, 0];
  for (const gather of gathers) {
    lame += gather.lame;
    seen += gather.seen;
    squares += gather.seen * gather.seen;
  }
  return { share: lame / seen, seen, squares };
}
