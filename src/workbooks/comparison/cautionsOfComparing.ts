import { cautions } from "../../../functions/cautions.ts";

/** What whoever reads a comparison is to take care of: on its first sheet, and on the page of each flock. */
export const cautionsOfComparing: readonly string[] = [
  "A low rank is no proof of good care, nor a high one of bad: flocks differ in fields, breeds, weather, and in who looked. Compare flocks that were looked at in the same way.",
  "Ranges allow for gathers that differ where they are known one by one. Steadied share and rank do not: they take a sheep that is looked at again for another one, and so look surer than they are.",
  cautions.medicineUse.words,
];
