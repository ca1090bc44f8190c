import { year } from "./flockYear.ts";
import type { InventedFlock } from "./inventedFlock.ts";
import { printedTag } from "./printedTag.ts";

/**
 * Tags picked out for a sale: the animals treated last, some treated long ago, some never treated, and one stray tag
 * that is in no record.
 */
export function saleList({ animals, cases }: InventedFlock): readonly string[] {
  const here = cases.filter(({ animal }) => animal.until === year.last);
  const treated = [...new Set(here.flatMap(({ animal, treated }) => (treated === undefined ? [] : [animal])))];
  const medicated = [...new Set(here.flatMap(({ animal, medicine }) => (medicine === undefined ? [] : [animal])))];
  const neverTreated = animals.filter(
    (animal) => animal.group.lambs && animal.until === year.last && !treated.includes(animal),
  );
  const picked = [...medicated.slice(-6), ...treated.slice(40, 44), ...neverTreated.slice(-3)];
  const tags = [...new Set(picked)].map(({ number }) => printedTag(number));
  return [...tags.slice(0, 4), "ZZ 0123456 07777", ...tags.slice(4)];
}
