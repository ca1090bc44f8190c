import { count } from "../../src/reading/numbers.ts";
import { one } from "../../src/reading/parameter.ts";

/** The animals over which the medicine is spread. */
export const pcuParameters = {
  breeding_sheep: one(count("sheep"), "Breeding sheep alive on the farm"),
  slaughter_lambs: one(count("lambs"), "Lambs sent to slaughter in the year"),
};

/** What is said under every function that gives mg/PCU. */
export const pcuNotes = [
  "PCU is the population correction unit, in kg: how much the sheep of a farm weigh when every farm counts alike.",
  "A breeding sheep counts 75 kg and a slaughter lamb 20 kg, whatever they weigh: the published weights, so that farms compare.",
  "mg/PCU is a figure for antibiotics over one year. Leave vaccines, worm and lice medicines and pain relief out of it.",
];
