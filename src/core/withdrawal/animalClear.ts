import type { Moment } from "../../cells/day.ts";
import { Problem } from "../../cells/problem.ts";
import type { Tag } from "../tags/tagKey.ts";
import { withoutZeros } from "../tags/withoutZeros.ts";
import { clearByAnimal, isTreatment, type Treatments } from "./clearByAnimal.ts";
import type { Counting } from "./clearDate.ts";

/**
 * When one animal is clear, over all of its treatments.
 *
 * @returns a serial, or undefined when no treatment of this animal is recorded
 * @throws Problem with the row when a treatment of this animal lacks its days or its date, or when one is recorded
 *   under a tag that differs by zeros at the front only, which a cell that holds a number loses
 * @example
 * animalClear(a, { tags: [a, a], treated: [46063, 46070], withdrawalDays: [28, 5] }, "whole days") // → 46092
 */
export function animalClear(tag: Tag, treatments: Treatments, counting: Counting): Moment | undefined {
  const animal = clearByAnimal(ofOneAnimal(tag, treatments), counting).get(tag.key);
  refuseLostZeros(tag, treatments);
  if (animal?.gap === undefined) return animal?.clear;
  const { missing, index } = animal.gap;
  throw missing === "withdrawal days"
    ? new Problem("it is blank, and a missing period is not 0 days; enter the days from the data sheet", {
        argument: "withdrawal_days",
        index,
      })
    : new Problem("it is blank, but withdrawal days are given; enter the date of the treatment", {
        argument: "treated",
        index,
      });
}

// A fault in another animal's record must not hide this animal's date; a treatment without a tag may be this animal's.
function ofOneAnimal(tag: Tag, { tags, treated, withdrawalDays }: Treatments): Treatments {
  const isOther = (index: number): boolean => {
    const recorded = tags[index];
    return recorded !== undefined && recorded.key !== tag.key;
  };
  return {
    tags,
    treated: treated.map((moment, index) => (isOther(index) ? undefined : moment)),
    withdrawalDays: withdrawalDays.map((days, index) => (isOther(index) ? undefined : days)),
  };
}

function refuseLostZeros(tag: Tag, { tags, treated, withdrawalDays }: Treatments): void {
  const digits = withoutZeros(tag.key);
  if (digits === undefined) return;
  const other = tags.find(
    (recorded, index) =>
      recorded !== undefined &&
      recorded.key !== tag.key &&
      withoutZeros(recorded.key) === digits &&
      isTreatment(treated[index], withdrawalDays[index]),
  );
  if (other === undefined) return;
  throw new Problem(`the treatments have ${other.shown} too; look at the zeros, and enter tags as text`, {
    argument: "tag",
  });
}
