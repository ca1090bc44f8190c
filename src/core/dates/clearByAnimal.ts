import type { Moment } from "../../cells/day.ts";
import { Doubt } from "../../cells/doubt.ts";
import { Problem } from "../../cells/problem.ts";
import { type ByAnimal, byAnimal } from "../words/byAnimal.ts";
import { noDate, noDays, noTag } from "../words/faults.ts";
import { nameKey } from "../words/nameKey.ts";
import type { Tag } from "../words/tagKey.ts";
import { type Counting, clearDate } from "./clearDate.ts";

/** The treatment records of a flock, a row a treatment; all columns have the same length. */
export interface Treatments {
  readonly tags: readonly (Tag | undefined | Doubt)[];
  readonly treated: readonly (Moment | undefined | Doubt)[];
  readonly withdrawalDays: readonly (number | undefined | Doubt)[];
  /** In a row without a tag: the group of which every animal was treated. */
  readonly groups?: readonly (string | undefined | Doubt)[] | undefined;
}

/** When the treatments of an animal, or of a group, are over. */
export interface Clearing {
  /** The latest over all treatments whose day and days are known; undefined when none are. */
  readonly clear: Moment | undefined;
  /** The record that gives the latest date, or the gap. */
  readonly index: number;
  /** The first thing that keeps the date from being known: then nothing here is clear. */
  readonly gap: Doubt | undefined;
}

/** When one animal is clear, over all of its treatments. */
export interface AnimalClear extends Clearing {
  readonly tag: Tag;
}

/** When a group that was treated as a whole is clear. */
export interface GroupClear extends Clearing {
  readonly group: string;
}

/** When the treatments are over of which nobody can say whom they were given to: they concern every animal. */
export interface UnknownClear extends Clearing {
  /** Why it is not known whom, in the record that gives the latest date or the gap. */
  readonly who: Doubt;
  /** How many such treatments there are. */
  readonly rows: number;
}

export interface FlockClear {
  /** In order of first treatment row. */
  readonly animals: ByAnimal<AnimalClear>;
  /** By the group's name without capitals and needless spaces. */
  readonly groups: ReadonlyMap<string, GroupClear>;
  readonly unknown: UnknownClear | undefined;
}

/**
 * When each treated animal is clear: the latest over all of its treatments.
 *
 * A row without treatment date and without days is no treatment. What cannot be read of a treatment is never passed over:
 * a missing or faulty day or period makes the animal's date unknown; a row without a tag is a treatment of its group; and
 * one with neither, or with a tag that cannot be read, may be any animal's.
 *
 * @example
 * clearByAnimal({ tags: [a, a], treated: [46063, 46070], withdrawalDays: [28, 5] }, "whole days").animals.get(a)
 * // → { tag: a, clear: 46092, index: 0, gap: undefined }
 */
export function clearByAnimal({ tags, treated, withdrawalDays, groups }: Treatments, counting: Counting): FlockClear {
  const animals = byAnimal<Writable<AnimalClear>>();
  const byGroup = new Map<string, Writable<GroupClear>>();
  let unknown: Writable<UnknownClear> | undefined;
  for (let index = 0; index < tags.length; index++) {
    const moment = treated[index];
    const days = withdrawalDays[index];
    if (!isTreatment(moment, days)) continue;
    const tag = tags[index];
    const end = endOf(moment, days, counting);
    if (tag !== undefined && !(tag instanceof Doubt)) {
      const animal = animals.get(tag);
      if (animal === undefined) animals.set(tag, begun(tag, end, index));
      else takeIn(animal, end, index);
      continue;
    }
    const group = groups?.[index];
    // A tag that is there and cannot be read is one animal's, which may have been of another group since.
    if (tag === undefined && group !== undefined && !(group instanceof Doubt)) {
      const key = nameKey(group);
      const treatedGroup = byGroup.get(key);
      if (treatedGroup === undefined) byGroup.set(key, { group, clear: dateOf(end), index, gap: gapOf(end) });
      else takeIn(treatedGroup, end, index);
      continue;
    }
    const who = tag ?? (group instanceof Doubt ? group : new Doubt("tags", noTag));
    if (unknown === undefined) unknown = { who, rows: 1, clear: dateOf(end), index, gap: gapOf(end) };
    else {
      unknown.rows++;
      if (takeIn(unknown, end, index)) unknown.who = who;
    }
  }
  return { animals, groups: byGroup, unknown };
}

/** A row with 0 days and no date is none either, since some spreadsheets hand over blanks as 0. */
const isTreatment = (treated: Moment | undefined | Doubt, withdrawalDays: number | undefined | Doubt): boolean =>
  treated !== undefined || (withdrawalDays !== undefined && withdrawalDays !== 0);

/** The end of one treatment, or what keeps it from being known. */
function endOf(
  moment: Moment | undefined | Doubt,
  days: number | undefined | Doubt,
  counting: Counting,
): Moment | Doubt {
  // Nearly all: a day and its days, which need no look at what else they might be.
  if (typeof moment === "number" && typeof days === "number" && counting === "whole days")
    return clearDate(moment, days, counting);
  if (moment instanceof Doubt) return moment;
  if (moment === undefined) return new Doubt("treated", noDate);
  if (days instanceof Doubt) return days;
  if (days === undefined) return new Doubt("withdrawal_days", noDays);
  try {
    return clearDate(moment, days, counting);
  } catch (error) {
    if (error instanceof Problem) return new Doubt("treated", error.fault);
    throw error;
  }
}

// Written out, since there is one for each animal of a flock.
const begun = (tag: Tag, end: Moment | Doubt, index: number): Writable<AnimalClear> => ({
  tag,
  clear: dateOf(end),
  index,
  gap: gapOf(end),
});

const dateOf = (end: Moment | Doubt): Moment | undefined => (typeof end === "number" ? end : undefined);
const gapOf = (end: Moment | Doubt): Doubt | undefined => (typeof end === "number" ? undefined : end);

/** @returns whether this treatment is now the one that says when all are over */
function takeIn(clearing: Writable<Clearing>, end: Moment | Doubt, index: number): boolean {
  if (typeof end !== "number") {
    if (clearing.gap !== undefined) return false;
    clearing.gap = end;
    clearing.index = index;
    return true;
  }
  if (clearing.clear !== undefined && end <= clearing.clear) return false;
  clearing.clear = end;
  if (clearing.gap !== undefined) return false;
  clearing.index = index;
  return true;
}

type Writable<T> = { -readonly [K in keyof T]: T[K] };

/** When something is clear, as a number to compare: never, while that is not known. */
export const whenClear = ({ gap, clear }: Clearing): Moment =>
  gap === undefined && clear !== undefined ? clear : Number.POSITIVE_INFINITY;
