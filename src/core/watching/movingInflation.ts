import type { Gather } from "./gathersByDay.ts";
import type { UsualLevel } from "./usualLevels.ts";

/** Mean difference between two normal values in standard deviations: 2 / √π (Tippett 1925, Biometrika 17:364). */
const meanDifference = 2 / Math.sqrt(Math.PI);

/**
 * How many times wider than by chance the gathers vary about their level: from the mean step from one gather to the next, each
 * measured in its own standard deviation (Laney's p′ chart), so that one lasting change does not hide itself.
 *
 * Never below 1. Nothing is supposed where steps are few, unlike in the range of a share: limits widened by a supposition
 * would hide an outbreak after a short baseline, and a signal asks only for a second look.
 *
 * @param gathers in order of time
 * @param levels what is usual at each; those without are passed over
 * @param known whether the levels are taken as known, or as counted from their own gathers
 * @source Laney 2002, Quality Engineering 14:531
 * @example
 * movingInflation([{ date: 1, lame: 2, seen: 50 }], [{ share: 0.04, seen: 50, squares: 2500 }], true) // → 1
 */
export function movingInflation(
  gathers: readonly Gather[],
  levels: readonly (UsualLevel | undefined)[],
  known: boolean,
): number {
  let [steps, sum] = [0, 0];
  let before: number | undefined;
  gathers.forEach((gather, index) => {
    const score = scoreOf(gather, levels[index], known);
    if (score === undefined) return;
    if (before !== undefined) {
      steps++;
      sum += Math.abs(score - before);
    }
    before = score;
  });
  const sigma = steps === 0 ? 1 : sum / steps / meanDifference;
  return Math.max(sigma * sigma, 1);
}

function scoreOf({ lame, seen }: Gather, level: UsualLevel | undefined, known: boolean): number | undefined {
  if (level === undefined || level.share === 0 || level.share === 1) return undefined;
  const variance = level.share * (1 - level.share) * (1 / seen + (known ? 0 : 1 / level.seen));
  return (lame / seen - level.share) / Math.sqrt(variance);
}
