import Big from "big.js";
import { Problem } from "../../cells/problem.ts";
import { flockPcu } from "./mgPerPcu.ts";

/** The courses given, a row a course, or a row for each animal of a group; all columns have the same length. */
export interface Courses {
  readonly products: readonly string[];
  /** ml for each animal. */
  readonly ml: readonly number[];
  readonly mgPerMl: readonly number[];
  /** How many animals were given so much, where a group was treated as a whole; undefined for one animal. */
  readonly animals?: readonly (number | undefined)[] | undefined;
}

export interface ProductUse {
  readonly product: string;
  readonly courses: number;
  readonly ml: number;
  readonly activeMg: number;
  readonly mgPerPcu: number;
}

/**
 * How much of each product was used, in order of first appearance, then all together.
 *
 * Capitals and spaces do not make another product. Volumes and mg are added in decimals.
 *
 * @param breedingSheep - breeding sheep alive on the farm
 * @param slaughterLambs - lambs sent to slaughter in the year
 * @returns ml, mg of active substance and mg for each kg of the population correction unit; an empty list without
 * courses
 * @throws Problem when a product is called "all", which is the name of the last row
 * @example
 * medicineUse({ products: ["A", "a"], ml: [7.5, 6], mgPerMl: [200, 200] }, 300, 450)
 * // → [{ product: "A", courses: 2, ml: 13.5, activeMg: 2700, mgPerPcu: 0.0857… }, { product: "all", … }]
 */
export function medicineUse(
  { products, ml, mgPerMl, animals }: Courses,
  breedingSheep: number,
  slaughterLambs: number,
): readonly ProductUse[] {
  const kg = flockPcu(breedingSheep, slaughterLambs);
  const sums = new Map<string, Sum>();
  const all = nothingUsed("all");
  products.forEach((written, index) => {
    const product = written.trim().replace(/\s+/g, " ");
    const key = product.toLowerCase();
    const fault = productFault(products, index);
    if (fault !== undefined) throw fault;
    const sum = sums.get(key) ?? nothingUsed(product);
    sums.set(key, sum);
    const courses = animals?.[index] ?? 1;
    // Most rows are of one animal, and a product in decimals is not free.
    const volume = courses === 1 ? (ml[index] ?? 0) : new Big(ml[index] ?? 0).times(courses);
    const mg = new Big(volume).times(mgPerMl[index] ?? 0);
    add(sum, courses, volume, mg);
    add(all, courses, volume, mg);
  });
  return sums.size === 0 ? [] : [...sums.values(), all].map((sum) => inNumbers(sum, kg));
}

/** What is wrong with the product of one row: it is named as the total is. */
export const productFault = (products: readonly string[], index: number): Problem | undefined =>
  products[index]?.trim().toLowerCase() === "all"
    ? new Problem('"all" is the name of the last row of the answer; leave total rows out, or name the product', {
        argument: "products",
        index,
      })
    : undefined;

/** What is wrong with the number of animals of one row: a group is named, and how many it had is not known. */
export const animalsFault = (
  groups: readonly (string | undefined)[] | undefined,
  animals: readonly (number | undefined)[] | undefined,
  index: number,
): Problem | undefined =>
  groups?.[index] !== undefined && animals?.[index] === undefined
    ? new Problem(
        { what: `${groups[index]} was treated as a group, but not how many`, mend: "enter the number of animals" },
        { argument: "animals", index },
      )
    : undefined;

interface Sum {
  readonly product: string;
  courses: number;
  ml: Big;
  activeMg: Big;
}

const nothingUsed = (product: string): Sum => ({ product, courses: 0, ml: new Big(0), activeMg: new Big(0) });

function add(sum: Sum, courses: number, ml: number | Big, mg: Big): void {
  sum.courses += courses;
  sum.ml = sum.ml.plus(ml);
  sum.activeMg = sum.activeMg.plus(mg);
}

const inNumbers = ({ product, courses, ml, activeMg }: Sum, kg: number): ProductUse => ({
  product,
  courses,
  ml: ml.toNumber(),
  activeMg: activeMg.toNumber(),
  mgPerPcu: activeMg.toNumber() / kg,
});
