/** How long one animal was watched, in days from its treatment, and whether it then was sound. */
export interface Watched {
  readonly days: number;
  readonly sound: boolean;
}

/** The animals whose watching ended after so many days. */
export interface Ends {
  readonly day: number;
  /** Sound at the end or not. */
  readonly ended: number;
  readonly becameSound: number;
}

/**
 * Counts animals by how long they were watched. A million records are a few hundred days: whatever follows is short.
 *
 * @returns days in order, each on which the watching of at least one ended
 * @example
 * endsByDay([{ days: 5, sound: false }, { days: 3, sound: true }])
 * // → [{ day: 3, ended: 1, becameSound: 1 }, { day: 5, ended: 1, becameSound: 0 }]
 */
export function endsByDay(animals: Iterable<Watched>): readonly Ends[] {
  const byDay = new Map<number, { -readonly [K in keyof Ends]: Ends[K] }>();
  for (const { days, sound } of animals) {
    let ends = byDay.get(days);
    if (ends === undefined) {
      ends = { day: days, ended: 0, becameSound: 0 };
      byDay.set(days, ends);
    }
    ends.ended++;
    if (sound) ends.becameSound++;
  }
  return [...byDay.values()].sort((a, b) => a.day - b.day);
}

/** How many animals there are in all. */
export const animalsIn = (ends: readonly Ends[]): number => ends.reduce((sum, { ended }) => sum + ended, 0);
