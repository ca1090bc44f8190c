import type { Moment } from "../../cells/day.ts";
import { Problem } from "../../cells/problem.ts";
import type { Tag } from "../tags/tagKey.ts";
import { type Counting, clearDate } from "./clearDate.ts";
import { atRow } from "./clearDates.ts";

/** The treatment records of a flock, a row a treatment; all three columns have the same length. */
export interface Treatments {
  readonly tags: readonly (Tag | undefined)[];
  readonly treated: readonly (Moment | undefined)[];
  readonly withdrawalDays: readonly (number | undefined)[];
}

/** What keeps an animal's clear date from being known. */
export interface Gap {
  readonly missing: "withdrawal days" | "treatment date";
  readonly index: number;
}

/** When one animal is clear, over all of its treatments. */
export interface AnimalClear {
  readonly tag: Tag;
  /** The latest over all treatments whose days are known; undefined when none are. */
  readonly clear: Moment | undefined;
  /** The first record that lacks its days or its date: then the animal is not known to be clear. */
  readonly gap: Gap | undefined;
}

/**
 * When each treated animal is clear: the latest over all of its treatments, by tag key, in order of first treatment row.
 *
 * A row without treatment date and without days is no treatment.
 *
 * @throws Problem when a treatment has no tag
 * @example
 * clearByAnimal({ tags: [a, a], treated: [46063, 46070], withdrawalDays: [28, 5] }, "whole days").get(a.key)
 * // → { tag: a, clear: 46092, gap: undefined }
 */
export function clearByAnimal(
  { tags, treated, withdrawalDays }: Treatments,
  counting: Counting,
): ReadonlyMap<string, AnimalClear> {
  const animals = new Map<string, Writable<AnimalClear>>();
  for (let index = 0; index < tags.length; index++) {
    const moment = treated[index];
    const days = withdrawalDays[index];
    if (!isTreatment(moment, days)) continue;
    const tag = tags[index];
    if (tag === undefined)
      throw new Problem("it is blank, but the row holds a treatment; enter the tag of the animal", {
        argument: "tags",
        index,
      });
    let animal = animals.get(tag.key);
    if (animal === undefined) {
      animal = { tag, clear: undefined, gap: undefined };
      animals.set(tag.key, animal);
    }
    if (moment === undefined) animal.gap ??= { missing: "treatment date", index };
    else if (days === undefined) animal.gap ??= { missing: "withdrawal days", index };
    else {
      const clear = atRow(index, () => clearDate(moment, days, counting));
      if (animal.clear === undefined || clear > animal.clear) animal.clear = clear;
    }
  }
  return animals;
}

/** A row with 0 days and no date is none either, since some spreadsheets hand over blanks as 0. */
export const isTreatment = (treated: Moment | undefined, withdrawalDays: number | undefined): boolean =>
  treated !== undefined || (withdrawalDays !== undefined && withdrawalDays !== 0);

type Writable<T> = { -readonly [K in keyof T]: T[K] };

/**
 * @example
 * gapInWords({ missing: "withdrawal days", index: 10 }, (index) => index + 2) // → "withdrawal days missing, row 12"
 */
export const gapInWords = ({ missing, index }: Gap, rowOf: (index: number) => number): string =>
  `${missing} missing, row ${rowOf(index)}`;
