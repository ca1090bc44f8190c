import type { Moment } from "../../cells/day.ts";
import { type Clearing, clearByAnimal, type Treatments, whenClear } from "./clearByAnimal.ts";
import type { Counting } from "./clearDate.ts";
import { otherHolds, unknownInWords } from "./flockHolds.ts";

export interface NotClear {
  /** An animal's tag; or whom else it concerns: every animal, or every animal of a group; or that there is nothing to go by. */
  readonly tag: string;
  /** A serial, or "not known" when a treatment lacks its days or its date, or one of them cannot be read. */
  readonly clear: Moment | "not known" | undefined;
  /** Whole days from `asOf` to the clear date; undefined when not known. */
  readonly daysToWait: number | undefined;
  /** What is missing or cannot be read, and in which row. */
  readonly why: string | undefined;
}

/**
 * The animals that may not go for food on a day: first every animal, where a treatment that is not over has no readable
 * tag; then those whose clear date is not known, groups before animals, in the order of their records; then those in
 * withdrawal, latest clear date first. An animal that is itself clear is listed for one whose tag is alike. Where there is
 * no treatment at all, one line says so; no line means that all treatments are over.
 *
 * @param asOf - a serial day; an animal that becomes clear during that day is still listed
 * @param rowOf - the row of the sheet for a place in the treatment columns
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
  const { animals, groups, unknown } = clearByAnimal(treatments, counting);
  // Columns picked by mistake, or not filled yet, must not read as a clear flock.
  if (animals.values.length === 0 && groups.size === 0 && unknown === undefined)
    return [{ tag: "no treatments recorded", clear: undefined, daysToWait: undefined, why: undefined }];
  const concernsAll: NotClear[] = [];
  const notKnown: NotClear[] = [];
  const waiting: (NotClear & { readonly clear: Moment })[] = [];
  const list = (tag: string, clearing: Clearing, doubt?: string): void => {
    const { gap, clear, index } = clearing;
    const why = doubt ?? gap?.inRow(rowOf(index));
    if (gap !== undefined || clear === undefined)
      notKnown.push({ tag, clear: "not known", daysToWait: undefined, why });
    else waiting.push({ tag, clear, daysToWait: Math.ceil(clear - asOf), why });
  };

  if (unknown !== undefined && whenClear(unknown) > asOf) {
    const { gap, clear } = unknown;
    const known = gap === undefined && clear !== undefined;
    concernsAll.push({
      tag: "every animal",
      clear: known ? clear : "not known",
      daysToWait: known ? Math.ceil(clear - asOf) : undefined,
      why: unknownInWords(unknown, rowOf),
    });
  }
  for (const treated of groups.values())
    if (whenClear(treated) > asOf) list(`every animal of group ${treated.group}`, treated);
  // Groups and treatments without a tag have lines of their own.
  const alikeHold = otherHolds({ animals, groups: new Map(), unknown: undefined }, asOf, rowOf);
  for (const animal of animals.values) {
    const other = alikeHold(animal.tag, undefined);
    if (other !== undefined && whenClear(other.clearing) > whenClear(animal))
      list(animal.tag.shown, other.clearing, other.why);
    else if (whenClear(animal) > asOf) list(animal.tag.shown, animal);
  }
  return [...concernsAll, ...notKnown, ...waiting.sort((a, b) => b.clear - a.clear)];
}
