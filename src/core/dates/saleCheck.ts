import type { Moment } from "../../cells/day.ts";
import { Doubt } from "../../cells/doubt.ts";
import { alikeAmong } from "../words/alikeAmong.ts";
import { nameKey } from "../words/nameKey.ts";
import type { Tag } from "../words/tagKey.ts";
import { type AnimalClear, type Clearing, clearByAnimal, type Treatments, whenClear } from "./clearByAnimal.ts";
import type { Counting } from "./clearDate.ts";
import { namesakeInWords, otherHolds } from "./flockHolds.ts";

/** The animals for sale, a row an animal. */
export interface SaleList {
  readonly tags: readonly (Tag | Doubt)[];
  /** The group of each, where it is known. */
  readonly groups?: readonly (string | undefined | Doubt)[] | undefined;
}

export interface SaleAnswer {
  readonly tag: string;
  readonly answer: "clear" | "hold" | "no treatment recorded";
  /**
   * A serial, or the reason why it is not known. Without a treatment undefined, or the treated animal whose tag is alike.
   */
  readonly clear: Moment | string | undefined;
  /** Whole days from the sale to the clear date; 0 when clear, undefined when not known. */
  readonly daysToWait: number | undefined;
}

/** The row of the sheet for a place in one of the two lists. */
export interface SaleRows {
  readonly sale: (index: number) => number;
  readonly treatment: (index: number) => number;
}

/**
 * Which of the animals for sale may go.
 *
 * An animal is held for whatever may concern it: its own treatments; those of its group, and of every group while its own
 * is not known; those without a readable tag; and those of an animal whose tag is alike. Each holds until its own period
 * is over. A tag that is in no treatment record is not called clear, since a mistyped tag looks the same.
 *
 * @returns an answer for each sale tag, in their order
 * @example
 * [...saleCheck({ tags: [a] }, 46091, { tags: [a], treated: [46063], withdrawalDays: [28] }, "whole days", rows)]
 * // → [{ tag: "041", answer: "hold", clear: 46092, daysToWait: 1 }]
 */
export function* saleCheck(
  { tags, groups }: SaleList,
  saleDate: Moment,
  treatments: Treatments,
  counting: Counting,
  rows: SaleRows,
): Generator<SaleAnswer> {
  const flock = clearByAnimal(treatments, counting);
  const holdOf = otherHolds(flock, saleDate, rows.treatment);
  const namesake = namesakes(flock.animals.values);
  for (let index = 0; index < tags.length; index++) {
    const tag = tags[index] as Tag | Doubt;
    if (tag instanceof Doubt) {
      yield held("not known", tag.inRow(rows.sale(index)));
      continue;
    }
    const own = flock.animals.get(tag);
    const group = groups?.[index];
    const other = holdOf(tag, typeof group === "string" ? nameKey(group) : undefined);
    if (other !== undefined && (own === undefined || whenClear(other.clearing) > whenClear(own)))
      yield other.sure ? answerFor(tag.shown, other.clearing, saleDate, rows.treatment) : held(tag.shown, other.why);
    else if (own !== undefined) yield answerFor(tag.shown, own, saleDate, rows.treatment);
    else yield { tag: tag.shown, answer: "no treatment recorded", clear: namesake(tag, rows), daysToWait: undefined };
  }
}

const held = (tag: string, why: string): SaleAnswer => ({ tag, answer: "hold", clear: why, daysToWait: undefined });

function answerFor(tag: string, clearing: Clearing, saleDate: Moment, rowOf: (index: number) => number): SaleAnswer {
  const { gap, clear, index } = clearing;
  if (gap !== undefined || clear === undefined) return held(tag, gap?.inRow(rowOf(index)) ?? "");
  // Rounded up: a period that ends during the day of sale is not over when that day begins.
  const days = Math.max(0, Math.ceil(clear - saleDate));
  return { tag, answer: days === 0 ? "clear" : "hold", clear, daysToWait: days };
}

/** A treated animal, clear by now, that a tag without a record may mean; looked for only once such a tag is met. */
function namesakes(animals: readonly AnimalClear[]): (tag: Tag, rows: SaleRows) => string | undefined {
  let alike: ((tag: Tag) => readonly AnimalClear[]) | undefined;
  return (tag, rows) => {
    alike ??= alikeAmong(animals);
    const [other] = alike(tag);
    return other && namesakeInWords(other, rows.treatment);
  };
}
