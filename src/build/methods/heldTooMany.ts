import { saleCheck } from "../../core/dates/saleCheck.ts";
import { type Tag, tagKey } from "../../core/words/tagKey.ts";
import { type SeededRandom, seededRandom } from "../../workbooks/inventedFlock/seededRandom.ts";
import { markdownRows } from "./markdownRows.ts";

/** Sheep in each invented flock; 1 in 20 is in withdrawal. */
export const flockSize = 2000;

type TagOf = (animal: number, random: SeededRandom) => string;

const full = (mark: number, number: number): string => `ZZ 0 ${mark} ${String(number).padStart(5, "0")}`;
const bought: TagOf = (animal, random) => full(200_000 + (animal % 8), random.whole(1, 99_999));

/** Ways in which flocks number their sheep. Common practice, no source; letters ZZ, which no animal has. */
export const numberings: Readonly<Record<string, TagOf>> = {
  "full tags, one in ten bought in": (animal, random) =>
    animal % 10 === 0 ? bought(animal, random) : full(123_456, animal),
  "short numbers": (animal) => String(animal),
  "numbers of four digits": (animal) => String(animal).padStart(4, "0"),
  "colours and numbers": (animal) => `${["Blue", "Red", "Green", "Pink"][animal % 4]} ${Math.ceil(animal / 4)}`,
  "pen and number": (animal) => `${1 + (animal % 20)}-${1 + Math.floor(animal / 20)}`,
  "short numbers, one in ten bought in with full tags": (animal, random) =>
    animal % 10 === 0 ? bought(animal, random) : String(animal),
};

/**
 * How many animals of an invented flock a sale holds only for a tag that is alike: every tag is written rightly, so each is
 * one too many.
 */
export function heldTooMany(tagOf: TagOf): number {
  const random = seededRandom(2026);
  const tags = Array.from({ length: flockSize }, (_, animal): Tag => {
    const shown = tagOf(animal + 1, random);
    return { key: tagKey(shown), shown };
  });
  const treated = tags.filter(() => random.happens(0.05));
  const inWithdrawal = new Set(treated.map(({ key }) => key));
  const treatments = { tags: treated, treated: treated.map(() => 46_000), withdrawalDays: treated.map(() => 28) };
  const rowOf = (index: number): number => index + 1;
  const rows = { sale: rowOf, treatment: rowOf };
  const answers = [...saleCheck({ tags }, 46_010, treatments, "whole days", rows)];
  return answers.filter(({ answer }, index) => answer === "hold" && !inWithdrawal.has((tags[index] as Tag).key)).length;
}

/** The same for each way of numbering. */
export const heldTooManyTable = (): string =>
  markdownRows(
    ["tags of the flock", "held too many"],
    Object.entries(numberings).map(([name, tagOf]) => [name, String(heldTooMany(tagOf))]),
  );
