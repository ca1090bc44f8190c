import Big from "big.js";
import { Problem } from "../../cells/problem.ts";
import { mostMl } from "./mostMl.ts";
import { syringeMark } from "./syringeMark.ts";

/** What the data sheet or the vet says, and the syringe at hand. */
export interface Dosing {
  readonly mgPerKg: number;
  readonly mgPerMl: number;
  /** ml between two marks of the syringe. */
  readonly markMl: number;
}

/** The dose for an animal of a given weight in kg, in ml at the syringe's mark. */
export type DoseFor = (weightKg: number) => number;

// Common practice, no source: no sheep weighs more.
const leastWeight = 1;
const mostWeight = 200;

/** The share of a dose by which its mark may miss it. Common practice, no source. */
const mostAstray = 0.2;

/**
 * How many ml each animal gets: weight × mg per kg ÷ mg per ml, to the nearest mark of the syringe; a dose halfway
 * between two marks goes to the upper one. Worked in decimals, so 7.5 is 7.5.
 *
 * @returns a computation of one dose from the weight in kg
 * @throws Problem when the mark is no syringe's; the computation throws one naming `argument` when the weight is outside
 * 1 to 200 kg, the nearest mark misses the dose by more than a fifth, or the dose is more than 60 ml
 * @example
 * doseMl({ mgPerKg: 20, mgPerMl: 200, markMl: 0.1 }, "weight_kg")(75) // → 7.5
 */
export function doseMl({ mgPerKg, mgPerMl, markMl }: Dosing, argument: string): DoseFor {
  const mark = syringeMark(markMl);
  const mg = new Big(mgPerKg);
  const perMark = mark.times(mgPerMl);
  return (weightKg) => {
    if (weightKg < leastWeight || weightKg > mostWeight)
      throw new Problem(`${weightKg} kg is outside ${leastWeight} to ${mostWeight} kg; enter the weight in kg`, {
        argument,
      });
    const marks = mg.times(weightKg).div(perMark);
    const dose = marks.round(0, Big.roundHalfUp).times(mark);
    const wanted = marks.times(mark);
    if (dose.minus(wanted).abs().gt(wanted.times(mostAstray)))
      throw new Problem(
        `${weightKg} kg asks for ${Number(wanted.toPrecision(2))} ml, and the nearest mark is ${dose} ml; take a finer syringe and enter its mark in mark_ml`,
        { argument },
      );
    if (dose.gt(mostMl))
      throw new Problem(
        `${dose} ml for an animal of ${weightKg} kg cannot be right; look at mg_per_kg and mg_per_ml again (a strength of 20 % is 200 mg in each ml)`,
        { argument },
      );
    return dose.toNumber();
  };
}
