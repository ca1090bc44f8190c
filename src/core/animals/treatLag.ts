import { type Day, showDay } from "../../cells/day.ts";
import { nothingToReport, Problem } from "../../cells/problem.ts";

export interface TreatLag {
  /** Of the treated; undefined when none is. */
  readonly medianDays: number | undefined;
  /** Share treated within the days asked for, of those for whom that is decided; undefined when it is for none. */
  readonly inTime: number | undefined;
  readonly untreated: number;
}

/**
 * How long lame sheep wait for treatment.
 *
 * Without `asOf`, the share in time is of the treated. With it, the share is of the sheep that were seen lame more than
 * `withinDays` before: one still untreated is late, and the others count neither way, treated or not. To count the treated of
 * the last days and not the untreated would make the share too good.
 *
 * @param seenLame - the day each was seen lame
 * @param treated - the day it was treated, undefined while it is not
 * @throws Problem with the row when a treatment precedes the seeing, or a day lies after `asOf`; #N/A without records
 * @see prompt is within 3 days: read
 * @example
 * treatLag([46063, 46063, 46063], [46064, 46068, undefined], 3)
 * // → { medianDays: 3, inTime: 0.5, untreated: 1 }
 */
export function treatLag(
  seenLame: readonly Day[],
  treated: readonly (Day | undefined)[],
  withinDays: number,
  asOf?: Day,
): TreatLag {
  if (seenLame.length === 0) throw nothingToReport("no lame sheep is recorded", { argument: "seen_lame" });
  // Typed, since numbers in such an array are put in order without a function that compares them.
  const waits = new Float64Array(seenLame.length);
  let waited = 0;
  let decided = 0;
  let inTime = 0;
  let untreated = 0;
  seenLame.forEach((seen, index) => {
    const day = treated[index];
    const fault = lagFault(index, seen, day, asOf);
    if (fault !== undefined) throw fault;
    const over = asOf === undefined ? day !== undefined : asOf - seen > withinDays;
    if (over) decided++;
    if (day === undefined) untreated++;
    else {
      waits[waited++] = day - seen;
      if (over && day - seen <= withinDays) inTime++;
    }
  });
  return {
    medianDays: median(waits.subarray(0, waited)),
    inTime: decided === 0 ? undefined : inTime / decided,
    untreated,
  };
}

/**
 * What is wrong with the days of one row: they cannot have followed each other so.
 *
 * @param asOf - the day up to which the records are complete, when it is known
 */
export function lagFault(index: number, seen: Day, day: Day | undefined, asOf: Day | undefined): Problem | undefined {
  if (asOf !== undefined && seen > asOf) return notFitting("seen_lame", index, seen, `after as_of, ${showDay(asOf)}`);
  if (day === undefined) return undefined;
  if (asOf !== undefined && day > asOf) return notFitting("treated", index, day, `after as_of, ${showDay(asOf)}`);
  return day < seen
    ? notFitting("treated", index, day, `before the sheep was seen lame on ${showDay(seen)}`)
    : undefined;
}

const notFitting = (argument: string, index: number, day: Day, why: string): Problem =>
  new Problem(`${showDay(day)} is ${why}; mend one of the two dates`, { argument, index });

function median(values: Float64Array): number | undefined {
  const sorted = values.sort();
  const upper = sorted[sorted.length >> 1];
  const lower = sorted[(sorted.length - 1) >> 1];
  return lower === undefined || upper === undefined ? undefined : (lower + upper) / 2;
}
