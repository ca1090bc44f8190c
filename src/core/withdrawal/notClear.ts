import type { Moment } from "../../cells/day.ts";
import { clearByAnimal, gapInWords, type Treatments } from "./clearByAnimal.ts";
import type { Counting } from "./clearDate.ts";

export interface NotClear {
  readonly tag: string;
  /** A serial, or "not known" when a treatment of the animal lacks its days or its date. */
  readonly clear: Moment | "not known";
  /** Whole days from `asOf` to the clear date; undefined when not known. */
  readonly daysToWait: number | undefined;
  /** What is missing, and in which row. */
  readonly why: string | undefined;
}

/**
 * The animals that may not go for food on a day: first those whose clear date is not known, in the order of their
 * records, then those in withdrawal, latest clear date first.
 *
 * @param asOf - a serial day; an animal that becomes clear during that day is still listed
 * @param rowOf - the row of the sheet for a place in the treatment columns
 * @throws Problem when a treatment has no tag
 * @example
 * notClear(46091, { tags: [a], treated: [46063], withdrawalDays: [28] }, "whole days", (index) => index + 2)
 * // → [{ tag: "041", clear: 46092, daysToWait: 1, why: undefined }]
 */
export function notClear(
  asOf: Moment,
  treatments: Treatments,
  counting: Counting,
  rowOf: (index: number) => number,
): readonly NotClear[] {
  const unknown: NotClear[] = [];
  const waiting: (NotClear & { readonly clear: Moment })[] = [];
  for (const { tag, clear, gap } of clearByAnimal(treatments, counting).values()) {
    if (gap !== undefined)
      unknown.push({ tag: tag.shown, clear: "not known", daysToWait: undefined, why: gapInWords(gap, rowOf) });
    else if (clear !== undefined && clear > asOf)
      waiting.push({ tag: tag.shown, clear, daysToWait: Math.ceil(clear - asOf), why: undefined });
  }
  return [...unknown, ...waiting.sort((a, b) => b.clear - a.clear)];
}
