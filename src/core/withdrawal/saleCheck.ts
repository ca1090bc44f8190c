import type { Moment } from "../../cells/day.ts";
import type { Tag } from "../tags/tagKey.ts";
import { type AnimalClear, clearByAnimal, gapInWords, type Treatments } from "./clearByAnimal.ts";
import type { Counting } from "./clearDate.ts";

export interface SaleAnswer {
  readonly tag: string;
  readonly answer: "clear" | "hold" | "no treatment recorded";
  /**
   * A serial, or the reason why it is not known. Without a treatment undefined, or the tag in the records that differs
   * by zeros at its front only.
   */
  readonly clear: Moment | string | undefined;
  /** Whole days from the sale to the clear date; 0 when clear, undefined when not known. */
  readonly daysToWait: number | undefined;
}

/**
 * Which of the animals for sale may go.
 *
 * An animal with a treatment whose days are missing is held. A tag that is in no treatment record is not called clear,
 * since a mistyped tag looks the same; a cell that holds a number loses the zeros at its front, so a treated animal's tag
 * that differs by them only is named.
 *
 * @param rowOf - the row of the sheet for a place in the treatment columns
 * @returns an answer for each sale tag, in their order
 */
export function* saleCheck(
  saleTags: readonly Tag[],
  saleDate: Moment,
  treatments: Treatments,
  counting: Counting,
  rowOf: (index: number) => number,
): Generator<SaleAnswer> {
  const animals = clearByAnimal(treatments, counting);
  const alike = alikeButForZeros(animals);
  for (const { key, shown } of saleTags) {
    const animal = animals.get(key);
    if (animal === undefined)
      yield { tag: shown, answer: "no treatment recorded", clear: alike(key), daysToWait: undefined };
    else if (animal.gap !== undefined)
      yield { tag: shown, answer: "hold", clear: gapInWords(animal.gap, rowOf), daysToWait: undefined };
    else {
      const clear = animal.clear as Moment;
      // Rounded up: a period that ends during the day of sale is not over when that day begins.
      const daysToWait = Math.max(0, Math.ceil(clear - saleDate));
      yield { tag: shown, answer: daysToWait === 0 ? "clear" : "hold", clear, daysToWait };
    }
  }
}

function alikeButForZeros(animals: ReadonlyMap<string, AnimalClear>): (key: string) => string | undefined {
  let shownAs: ReadonlyMap<string, string> | undefined;
  return (key) => {
    if (!isNumber.test(key)) return undefined;
    shownAs ??= shownWithoutZeros(animals);
    const shown = shownAs.get(withoutZeros(key));
    return shown && `look at the zeros: ${shown} has a treatment`;
  };
}

function shownWithoutZeros(animals: ReadonlyMap<string, AnimalClear>): ReadonlyMap<string, string> {
  const shownAs = new Map<string, string>();
  for (const [key, { tag }] of animals) if (isNumber.test(key)) shownAs.set(withoutZeros(key), tag.shown);
  return shownAs;
}

const isNumber = /^\d+$/;
const withoutZeros = (key: string): string => key.replace(/^0+/, "");
