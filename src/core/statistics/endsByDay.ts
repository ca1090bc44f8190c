/** How the watching of one animal ended: found sound, left the flock without that, or still lame when last looked at. */
type Ending = "sound" | "left" | "lame";

/** How long one animal was watched, in days from its treatment, and how that ended. */
export interface Watched {
  readonly days: number;
  readonly end: Ending;
  /** Of an animal found sound: the last day on which it was seen lame still, where a look between is recorded. */
  readonly lameUntil?: number | undefined;
}

/** Animals found sound on one day that had been seen lame on the same day before. */
interface FoundAfter {
  readonly lameUntil: number;
  readonly animals: number;
}

/** The animals whose watching ended after so many days. */
export interface Ends {
  readonly day: number;
  /** However it ended. */
  readonly ended: number;
  readonly becameSound: number;
  /** Sold, dead or culled before they were found sound. */
  readonly leftLame: number;
  /** Those of `becameSound` that may have been sound some days before they were found so. */
  readonly foundAfter: readonly FoundAfter[];
}

/**
 * Counts animals by how long they were watched. A million records are a few hundred days: whatever follows is short.
 *
 * @returns days in order, each on which the watching of at least one ended
 * @example
 * endsByDay([{ days: 5, end: "lame" }, { days: 3, end: "sound" }]).map(({ day, becameSound }) => [day, becameSound])
 * // → [[3, 1], [5, 0]]
 */
export function endsByDay(animals: Iterable<Watched>): readonly Ends[] {
  const byDay = new Map<number, { ended: number; becameSound: number; leftLame: number; after: Map<number, number> }>();
  for (const { days, end, lameUntil } of animals) {
    let ends = byDay.get(days);
    if (ends === undefined) {
      ends = { ended: 0, becameSound: 0, leftLame: 0, after: new Map() };
      byDay.set(days, ends);
    }
    ends.ended++;
    if (end === "left") ends.leftLame++;
    if (end !== "sound") continue;
    ends.becameSound++;
    // Seen lame the day before leaves no day open.
    if (lameUntil !== undefined && lameUntil < days - 1) {
      ends.after.set(lameUntil, (ends.after.get(lameUntil) ?? 0) + 1);
    }
  }
  return [...byDay]
    .sort(([one], [other]) => one - other)
    .map(([day, { after, ...ends }]) => ({
      day,
      ...ends,
      foundAfter: [...after].map(([lameUntil, count]) => ({ lameUntil, animals: count })),
    }));
}

/** How many animals there are in all. */
export const animalsIn = (ends: readonly Ends[]): number => ends.reduce((sum, { ended }) => sum + ended, 0);
