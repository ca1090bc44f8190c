import type { Moment } from "../../cells/day.ts";
import { Doubt } from "../../cells/doubt.ts";
import { Problem } from "../../cells/problem.ts";
import { endsAlike, isAlike } from "../words/likeness.ts";
import type { Tag } from "../words/tagKey.ts";
import { type AnimalClear, type Clearing, clearByAnimal, type Treatments, whenClear } from "./clearByAnimal.ts";
import type { Counting } from "./clearDate.ts";
import { alikeInWords } from "./flockHolds.ts";

/**
 * When one animal is clear, over all of its treatments and those without a readable tag, which may be its own.
 *
 * @param rowOf - the row of the sheet for a place in the treatment columns
 * @returns a serial, or undefined when no treatment of this animal is recorded
 * @throws Problem with the row when a treatment that may be of this animal lacks its days or its date, or one of them
 *   cannot be read; and when one that is clear later, or not known, stands under a tag that is alike
 * @example
 * animalClear(a, { tags: [a, a], treated: [46063, 46070], withdrawalDays: [28, 5] }, "whole days", (index) => index + 1)
 * // → 46092
 */
export function animalClear(
  tag: Tag,
  treatments: Treatments,
  counting: Counting,
  rowOf: (index: number) => number,
): Moment | undefined {
  const { animals, unknown } = clearByAnimal(ofOneAnimal(tag, treatments), counting);
  const own = animals.get(tag);
  const last = laterOf(own, unknown);
  if (last?.gap !== undefined) throw new Problem(last.gap.fault, { argument: last.gap.argument, index: last.index });
  const other = lastOf(animals.values, tag);
  if (other !== undefined && (last === undefined || whenClear(other) > whenClear(last)))
    throw new Problem(`${alikeInWords(other, rowOf)}; look at both tags, and enter tags as text`, { argument: "tag" });
  return last?.clear;
}

// What is recorded of other animals must not hide this animal's date; what stands under no tag may be this animal's.
function ofOneAnimal(tag: Tag, { tags, treated, withdrawalDays }: Treatments): Treatments {
  const alike = new Map<string, boolean>();
  const isOther = (index: number): boolean => {
    const recorded = tags[index];
    if (recorded === undefined || recorded instanceof Doubt || recorded.key === tag.key) return false;
    if (!endsAlike(tag.key, recorded.key)) return true;
    let found = alike.get(recorded.key);
    if (found === undefined) {
      found = isAlike(tag, recorded);
      alike.set(recorded.key, found);
    }
    return !found;
  };
  return {
    tags,
    treated: treated.map((moment, index) => (isOther(index) ? undefined : moment)),
    withdrawalDays: withdrawalDays.map((days, index) => (isOther(index) ? undefined : days)),
  };
}

const laterOf = <A extends Clearing, B extends Clearing>(
  one: A | undefined,
  other: B | undefined,
): A | B | undefined => (other !== undefined && (one === undefined || whenClear(other) > whenClear(one)) ? other : one);

function lastOf(animals: Iterable<AnimalClear>, tag: Tag): AnimalClear | undefined {
  let last: AnimalClear | undefined;
  for (const animal of animals) if (animal.tag.key !== tag.key) last = laterOf(last, animal);
  return last;
}
