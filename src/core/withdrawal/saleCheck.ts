import type { Moment } from "../../cells/day.ts";
import type { Tag } from "../tags/tagKey.ts";
import { withoutZeros } from "../tags/withoutZeros.ts";
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
 * that differs by them only is named, and while that animal is not clear this one is held, treated or not.
 *
 * @param rowOf - the row of the sheet for a place in the treatment columns
 * @returns an answer for each sale tag, in their order
 * @example
 * [...saleCheck([a], 46091, { tags: [a], treated: [46063], withdrawalDays: [28] }, "whole days", (index) => index + 2)]
 * // → [{ tag: a.shown, answer: "hold", clear: 46092, daysToWait: 1 }]
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
    const other = alike(key);
    const isOtherHeld = other !== undefined && other !== animal && daysToWait(other, saleDate) !== 0;
    if (animal !== undefined && (!isOtherHeld || daysToWait(animal, saleDate) !== 0))
      yield answerFor(shown, animal, saleDate, rowOf);
    else
      yield {
        tag: shown,
        answer: isOtherHeld ? "hold" : "no treatment recorded",
        clear: other && `look at the zeros: ${other.tag.shown} has a treatment`,
        daysToWait: undefined,
      };
  }
}

function answerFor(tag: string, animal: AnimalClear, saleDate: Moment, rowOf: (index: number) => number): SaleAnswer {
  const days = daysToWait(animal, saleDate);
  const clear = animal.gap === undefined ? animal.clear : gapInWords(animal.gap, rowOf);
  return { tag, answer: days === 0 ? "clear" : "hold", clear, daysToWait: days };
}

/** Rounded up: a period that ends during the day of sale is not over when that day begins. Undefined when not known. */
const daysToWait = ({ gap, clear }: AnimalClear, saleDate: Moment): number | undefined =>
  gap !== undefined || clear === undefined ? undefined : Math.max(0, Math.ceil(clear - saleDate));

type Alike = (key: string) => AnimalClear | undefined;

// Of several treated animals that are alike the one that is clear last counts, and before it one that is not known.
function alikeButForZeros(animals: ReadonlyMap<string, AnimalClear>): Alike {
  let byDigits: ReadonlyMap<string, AnimalClear> | undefined;
  return (key) => {
    const digits = withoutZeros(key);
    if (digits === undefined) return undefined;
    byDigits ??= lastByDigits(animals);
    return byDigits.get(digits);
  };
}

function lastByDigits(animals: ReadonlyMap<string, AnimalClear>): ReadonlyMap<string, AnimalClear> {
  const last = new Map<string, AnimalClear>();
  for (const [key, animal] of animals) {
    const digits = withoutZeros(key);
    if (digits === undefined) continue;
    const other = last.get(digits);
    if (other === undefined || whenClear(animal) > whenClear(other)) last.set(digits, animal);
  }
  return last;
}

const whenClear = ({ gap, clear }: AnimalClear): Moment =>
  gap === undefined && clear !== undefined ? clear : Number.POSITIVE_INFINITY;
