import { mgPerPcu } from "../../src/core/medicines/mgPerPcu.ts";
import { about, defineFunction } from "../../src/definition/defineFunction.ts";
import { nothing, problem } from "../../src/definition/problemExamples.ts";
import { nonNegative } from "../../src/reading/numbers.ts";
import { one } from "../../src/reading/parameter.ts";
import { single } from "../../src/writing/result.ts";
import { cautions } from "../cautions.ts";
import { sources } from "../sources.ts";
import { pcuNotes, pcuParameters } from "./pcuParameters.ts";

export const mgPerPcuFunction = defineFunction({
  name: "MGPCU",
  summary: "How much antibiotic was used in a year, in mg for each kg of sheep counted at fixed weights (mg/PCU).",
  questions: ["mg per PCU", "how much antibiotic do we use", "antibiotic use of the flock"],
  notes: [
    ...pcuNotes,
    "To compare: in 207 sheep flocks the mean was 11.38 and the median 5.95 mg/PCU (Davies and others 2017).",
  ],
  parameters: {
    active_mg: one(nonNegative("mg of active substance"), "mg of active antibiotic substance used in the year"),
    ...pcuParameters,
  },
  result: single("mg/PCU", "rate"),
  caution: cautions.medicineUse,
  sources: [sources.esvacWeights, sources.davies2017],
  compute: ({ active_mg, breeding_sheep, slaughter_lambs }) => mgPerPcu(active_mg, breeding_sheep, slaughter_lambs),
  examples: [
    {
      shows: "300 ewes and 450 lambs weigh 31,500 kg",
      call: [153600, 300, 450],
      gives: about(4.876190476, 9),
    },
    { shows: "None used", call: [0, 300, 450], gives: 0 },
    { call: [153600, 0, 0], gives: nothing("breeding_sheep: there are no breeding sheep and no slaughter lambs") },
    {
      call: [153600, 300.5, 450],
      gives: problem("breeding_sheep: 300.5 is not a whole number; enter a whole number of sheep, 0 or more"),
    },
    {
      call: [-1, 300, 450],
      gives: problem("active_mg: -1 is below 0; enter mg of active substance, 0 or more"),
    },
  ],
});
