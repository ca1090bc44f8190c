import { nothingToReport } from "../../cells/problem.ts";

/** kg for one animal in the population correction unit: European Medicines Agency, ESVAC (read about). */
const pcuKg = { breedingSheep: 75, slaughterLamb: 20 } as const;

/**
 * The kg of animals over which the use of antibiotics is spread.
 *
 * @throws nothing to report when there are no animals
 * @example
 * flockPcu(300, 450) // → 31500
 */
export function flockPcu(breedingSheep: number, slaughterLambs: number): number {
  const kg = breedingSheep * pcuKg.breedingSheep + slaughterLambs * pcuKg.slaughterLamb;
  if (kg === 0)
    throw nothingToReport("there are no breeding sheep and no slaughter lambs", { argument: "breeding_sheep" });
  return kg;
}

/**
 * Antibiotic used over a year, in mg for each kg of the flock's population correction unit.
 *
 * @param activeMg - mg of active substance used in the year
 * @param breedingSheep - breeding sheep alive on the farm
 * @param slaughterLambs - lambs sent to slaughter in the year
 * @example
 * mgPerPcu(153600, 300, 450) // → 4.8761904761…
 */
export const mgPerPcu = (activeMg: number, breedingSheep: number, slaughterLambs: number): number =>
  activeMg / flockPcu(breedingSheep, slaughterLambs);
