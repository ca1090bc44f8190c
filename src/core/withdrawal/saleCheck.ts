import type { Moment } from "../../cells/day.ts";
import type { Tag } from "../tags/tagKey.ts";
import { clearByAnimal, gapInWords, type Treatments } from "./clearByAnimal.ts";
import type { Counting } from "./clearDate.ts";

export interface SaleAnswer {
  readonly tag: string;
  readonly answer: "clear" | "hold" | "no treatment recorded";
  /** A serial, or the reason why it is not known; undefined when there was no treatment. */
  readonly clear: Moment | string | undefined;
  /** Whole days from the sale to the clear date; 0 when clear, undefined when not known. */
  readonly daysToWait: number | undefined;
}

/**
 * Which of the animals for sale may go.
 *
 * An animal with a treatment whose days are missing is held. A tag that is in no treatment record is not called clear,
 * since a mistyped tag looks the same.
 *
 * @param rowOf - the row of the sheet for a place in the treatment columns
 * @returns an answer for each sale tag, in their order
 */
export function saleCheck(
  saleTags: readonly Tag[],
  saleDate: Moment,
  treatments: Treatments,
  counting: Counting,
  rowOf: (index: number) => number,
): readonly SaleAnswer[] {
  const animals = clearByAnimal(treatments, counting);
  return saleTags.map(({ key, shown }): SaleAnswer => {
    const animal = animals.get(key);
    if (animal === undefined)
      return { tag: shown, answer: "no treatment recorded", clear: undefined, daysToWait: undefined };
    if (animal.gap !== undefined)
      return { tag: shown, answer: "hold", clear: gapInWords(animal.gap, rowOf), daysToWait: undefined };
    const clear = animal.clear as Moment;
    // Rounded up: a period that ends during the day of sale is not over when that day begins.
    const daysToWait = Math.max(0, Math.ceil(clear - saleDate));
    return { tag: shown, answer: daysToWait === 0 ? "clear" : "hold", clear, daysToWait };
  });
}
