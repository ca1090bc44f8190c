import type { Gather } from "./gathersByDay.ts";

/**
 * The share lame in all gathers together.
 *
 * @example
 * shareOfGathers([{ date: 46000, lame: 1, seen: 30 }, { date: 46010, lame: 3, seen: 10 }]) // → 0.1
 */
export const shareOfGathers = (gathers: readonly Gather[]): number =>
  gathers.reduce((sum, { lame }) => sum + lame, 0) / gathers.reduce((sum, { seen }) => sum + seen, 0);
