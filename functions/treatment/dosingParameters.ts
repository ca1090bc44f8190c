import { positive } from "../../src/reading/numbers.ts";
import { one, oneOr } from "../../src/reading/parameter.ts";

/** ml between two marks of the syringe, for every function that measures one out. */
export const markMl = oneOr(
  positive("ml between two marks of the syringe"),
  0.1,
  "ml between two marks of the syringe",
);

/** Dose and strength, for every function that works out a dose. */
export const dosingParameters = {
  mg_per_kg: one(positive("mg of active substance for each kg"), "Dose: mg for each kg of the animal, from the vet"),
  mg_per_ml: one(positive("mg of active substance in each ml"), "Strength: mg in each ml, from the data sheet"),
  mark_ml: markMl,
};

/** What is said under every function that rounds a dose. */
export const roundingNote =
  "A dose is rounded to the nearest mark of the syringe; halfway between two marks it goes up. It is worked out in decimals, so the answer falls exactly on a mark.";
